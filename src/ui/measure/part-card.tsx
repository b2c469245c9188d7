import { useEffect, useState } from "preact/hooks";
import type { Ending, FittedPart, Services, Texts } from "../../session/index.ts";
import { Hazards } from "../chat/index.ts";
import { showList } from "./format.ts";
import { Offer } from "./offer.tsx";
import { ShopHelp } from "./shop-help.tsx";

type Wanted = NonNullable<Ending["part"]>;
type Props = { wanted: Wanted; services: Services; texts: Texts };

/** The one right part: what the shop has for this very code, or the kind of part and the shop's help. */
export function PartCard({ wanted, services, texts }: Props) {
  const { model, kind, name, tools } = wanted;
  const [fitted, setFitted] = useState<FittedPart | "broken" | null>(null);
  const [attempt, setAttempt] = useState(0);

  useEffect(() => {
    if (model === null) return;
    let current = true;
    setFitted(null);
    services.partFor(model, kind).then(
      (answer) => current && setFitted(answer),
      () => current && setFitted("broken"),
    );
    return () => {
      current = false;
    };
  }, [model, kind, attempt]);

  const known = model !== null && fitted !== "broken" && fitted?.kind === "part" ? fitted : null;
  const minutes = known?.part.effortMinutes ?? wanted.effortMinutes;
  return (
    <section class="part-card">
      <p class={`claim ${wanted.claim}`}>{texts(`part.claim-${wanted.claim}`)}</p>
      <h3>{name}</h3>
      <p>{wanted.claimText}</p>
      {model && (
        <p>
          {texts("part.fits")} <span class="model-code">{model}</span>
        </p>
      )}
      {known && model ? (
        <>
          <Offer part={known.part} model={model} services={services} texts={texts} />
          {known.alternatives.length > 0 && (
            <details>
              <summary>{texts("part.others", { count: known.alternatives.length })}</summary>
              {known.alternatives.map((part) => (
                <Offer key={part.number} part={part} model={model} services={services} texts={texts} />
              ))}
            </details>
          )}
        </>
      ) : model && !fitted ? (
        <p class="card skeleton">{texts("part.looking")}</p>
      ) : (
        <NoOffer
          fitted={
            model === null ? "unknown-model" : fitted === "broken" ? fitted : (fitted?.kind ?? "broken")
          }
          onRetry={() => setAttempt(attempt + 1)}
          {...{ wanted, services, texts }}
        />
      )}
      <p class="small">
        {texts("part.effort", { count: minutes })}
        {tools.length > 0 && ` · ${texts("ui.tools", { tools: showList(texts, tools) })}`}
      </p>
      {wanted.fitting && <p>{wanted.fitting}</p>}
      <Hazards hazards={wanted.cautions} texts={texts} />
    </section>
  );
}

/** No guess: the kind of part is known, the shop's people find the number. */
function NoOffer({ fitted, onRetry, wanted, services, texts }: Props & { fitted: string; onRetry(): void }) {
  return (
    <div class="offer">
      <p role="status">{texts(`part.${fitted}`, { part: wanted.name, model: wanted.model ?? "" })}</p>
      {fitted === "broken" && (
        <button type="button" onClick={onRetry}>
          {texts("part.retry")}
        </button>
      )}
      <ShopHelp services={services} texts={texts} />
    </div>
  );
}
