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

  const part = fitted !== "broken" && fitted?.kind === "part" ? fitted : null;
  // Without a code there is nothing to look up; without an answer yet, nothing to say.
  const state = model === null ? "unknown-model" : fitted === "broken" ? fitted : fitted?.kind;
  return (
    <section class="part-card">
      <p class="claim">{texts(`part.claim-${wanted.claim}`)}</p>
      <h3>{name}</h3>
      <p>{wanted.claimText}</p>
      {model && (
        <p>
          {texts("part.fits")} <span class="model-code">{model}</span>
        </p>
      )}
      {!state && <p class="card skeleton">{texts("part.looking")}</p>}
      {part && model && (
        <>
          <Offer part={part.part} model={model} services={services} texts={texts} />
          {part.alternatives.length > 0 && (
            <details>
              <summary>{texts("part.others", { count: part.alternatives.length })}</summary>
              {part.alternatives.map((other) => (
                <Offer key={other.number} part={other} model={model} services={services} texts={texts} />
              ))}
            </details>
          )}
        </>
      )}
      {state && !part && (
        <div class="offer">
          <p role="status">{texts(`part.${state}`, { part: name, model: model ?? "" })}</p>
          {state === "broken" && (
            <button type="button" onClick={() => setAttempt(attempt + 1)}>
              {texts("part.retry")}
            </button>
          )}
          <ShopHelp services={services} texts={texts} />
        </div>
      )}
      <p class="small">
        {texts("part.effort", { count: part?.part.effortMinutes ?? wanted.effortMinutes })}
        {tools.length > 0 && ` · ${texts("ui.tools", { tools: showList(texts, tools) })}`}
      </p>
      {wanted.fitting && <p>{wanted.fitting}</p>}
      <Hazards hazards={wanted.cautions} texts={texts} />
    </section>
  );
}
