import type { Ending } from "../../../turn/index.ts";
import { Hazards, type ScreenProps, Tile } from "../../frame/index.ts";
import { otherVariant, saidOf, showList, useFitted } from "../reading/index.ts";
import { Offer } from "./offer.tsx";
import { PlateQuestion } from "./plate-question.tsx";
import { ShopHelp } from "./shop-help.tsx";

type Wanted = NonNullable<Ending["part"]>;
type Props = ScreenProps & { wanted: Wanted };

/** The one right part: what the shop has for this very machine, or the kind of part and the shop's help. */
export function PartCard({ wanted, turn, actions, busy, services, texts, picture }: Props) {
  const { model, kind, name, tools } = wanted;
  const canLookUp = services.canLookUp();
  const lookedUp = canLookUp ? model : null;
  const { fitted, plate, asked, read, retry } = useFitted(lookedUp, kind, services);
  const { variant, serial } = plate;
  const answer = fitted === "broken" ? null : fitted;
  const [part, ...others] = answer?.kind === "part" ? [answer.part, ...answer.alternatives] : [];
  // Without a code, or a list to look it up in, the kind of part is all there is to say.
  const said = lookedUp === null ? "unknown-model" : saidOf(fitted, plate, asked);
  // The shop's list may have changed since the code was given, or have come since.
  const isCodeMissing = canLookUp && said === "unknown-model";
  const values = { part: name, model: model ?? "", variant: variant ?? "", serial: serial ?? "" };
  const machine = {
    model: model ?? "",
    ...(variant && variant !== otherVariant && { variant }),
    ...(serial && { serial }),
  };
  return (
    <section part="ending" class="part-card">
      <p class="claim">{texts(`part.claim-${wanted.claim}`)}</p>
      <h3>{name}</h3>
      {/* Where it sits; a picture of the product comes with the shop's offer. */}
      <Tile id={wanted.picture} picture={picture} />
      <p>{wanted.claimText}</p>
      {model && (
        <p>
          {texts(part ? "part.fits" : "part.model")} <span class="model-code">{model}</span>
        </p>
      )}
      {part && <p class="small">{texts("part.check-model")}</p>}
      <PlateQuestion
        asked={asked}
        plate={plate}
        isUnlike={answer?.kind === "unread" && Boolean(serial)}
        onRead={(next) => {
          for (const name of ["variant", "serial"] as const)
            services.draft.keep(turn.turn, name, next[name] && next[name] !== otherVariant ? next[name] : "");
          read(next);
        }}
        part={name}
        texts={texts}
      />
      <p role="status">{said && texts(`part.${isCodeMissing && model ? "lost-model" : said}`, values)}</p>
      {isCodeMissing && (
        <button type="button" aria-disabled={busy} onClick={() => actions.retypeModel()}>
          {texts(model ? "part.retype" : "part.type")}
        </button>
      )}
      {lookedUp && !fitted && <p class="card skeleton">{texts("part.looking")}</p>}
      {part && <Offer key={part.number} part={part} machine={machine} services={services} texts={texts} />}
      {others.length > 0 && (
        <details>
          <summary>{texts("part.others", { count: others.length })}</summary>
          {others.map((other) => (
            <Offer key={other.number} part={other} machine={machine} services={services} texts={texts} />
          ))}
        </details>
      )}
      {said === "broken" && (
        <button type="button" onClick={retry}>
          {texts("part.retry")}
        </button>
      )}
      {said && !part && <ShopHelp services={services} texts={texts} />}
      <p class="small">
        {texts("part.effort", { count: part?.effortMinutes ?? wanted.effortMinutes })}
        {tools.length > 0 && ` · ${texts("ui.tools", { tools: showList(texts, tools) })}`}
      </p>
      {wanted.fitting && <p>{wanted.fitting}</p>}
      <Hazards hazards={wanted.cautions} texts={texts} />
    </section>
  );
}
