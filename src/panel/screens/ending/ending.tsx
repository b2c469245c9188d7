import type { Ending, Evidence, Texts } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import type { AfterEnding } from "../care/index.ts";
import { PartCard, ShopHelp } from "../part/index.ts";
import { useKept } from "../reading/index.ts";
import { WaitScreen } from "../wait/index.ts";
import { glanceOf } from "./glance.ts";
import { likelyHead, summaryOf, triedText } from "./summary.ts";
import { TakeAlong } from "./take-along.tsx";
import { Worth } from "./worth.tsx";

/** Makes the screen of an ending. @param After what is asked and said after it, in its own time */
export const createEnding = (After: AfterEnding) => (props: ScreenProps) => (
  <EndingScreen {...props} after={After} />
);

/**
 * How it ended, below its cause and what to do: the evidence in one glance, the part or whom to call, what else it may be,
 * what to do meanwhile, and all that was found, to take along.
 */
export function EndingScreen({ after: After, ...props }: ScreenProps & { after?: AfterEnding }) {
  const { turn, actions, busy, services, texts } = props;
  const { ending } = turn;
  const [age, setAge] = useKept<string>(props, "age", "", ending?.age?.options.map(({ id }) => id) ?? []);
  if (!ending) return null;
  const { outcome, part } = ending;
  const found = [...ending.evidence].sort((a, b) => Number(b.proves) - Number(a.proves));
  const glance = glanceOf(turn, texts);
  const evidence = <Found found={found} isProof={part?.claim === "proved"} texts={texts} />;
  const tried = triedText(ending, texts);
  const takeAlong = (
    <TakeAlong text={summaryOf(turn, found, { said: services.said(), age }, texts)} texts={texts} />
  );
  // Nobody has fitted the part yet who reads this first: there it stands below what else it may be.
  const waysOn = <WaysOn outcome={outcome} actions={actions} busy={busy} texts={texts} />;
  const likely = <Likely ending={ending} texts={texts} />;
  return (
    <>
      {After && outcome !== "stopped" && outcome !== "later" && <After {...props} at="top" />}
      {ending.back[0] && (
        <div part="ending" class="card back">
          <h3>{texts("part.last-steps")}</h3>
          <ol class="how">
            {ending.back.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </div>
      )}
      {!ending.causeId && likely}
      {glance[0] && (
        <ul class="glance">
          {glance.map(({ kind, text }) => (
            <li key={kind} class={kind}>
              {text}
            </li>
          ))}
        </ul>
      )}
      {tried && <p>{tried}</p>}
      {part && <PartCard {...props} wanted={part} />}
      {outcome === "later" && <WaitScreen {...props} />}
      {ending.who && (
        <div part="ending" class="card who">
          <h3>{texts("part.who")}</h3>
          <p>{ending.who}</p>
          {outcome === "professional" && <ShopHelp services={services} texts={texts} />}
        </div>
      )}
      {ending.causeId && likely}
      {part && waysOn}
      {ending.until && <p class="until">{ending.until}</p>}
      <Worth {...ending} chosen={age} onChosen={setAge} texts={texts} />
      {outcome === "stopped" ? (
        // Whoever has to get to safety is to do nothing else first.
        <details>
          <summary>{texts("part.found")}</summary>
          {evidence}
          {takeAlong}
        </details>
      ) : (
        <>
          {found[0] && <h3>{texts(part ? "part.why" : "part.found")}</h3>}
          {evidence}
          {After && outcome === "fixed" && <After {...props} at="end" />}
          <div class="dock">
            {!part && waysOn}
            {takeAlong}
          </div>
        </>
      )}
    </>
  );
}

/** What it most likely is, or where a cause is established already what else it may be. */
function Likely({ ending, texts }: { ending: Ending; texts: Texts }) {
  const { likely } = ending;
  if (!likely[0]) return null;
  return (
    <div part="ending" class="card likely">
      <h3>{texts(likelyHead(ending))}</h3>
      <ol>
        {likely.map(({ causeId, cause, part }) => (
          <li key={causeId}>
            {cause} {part && texts("part.bring", { part })}
          </li>
        ))}
      </ol>
    </div>
  );
}

/** Nothing is over for good: whoever comes back goes on where they were. */
function WaysOn({
  outcome,
  actions,
  busy,
  texts,
}: Pick<ScreenProps, "actions" | "busy" | "texts"> & { outcome: Ending["outcome"] }) {
  const back = { fixed: "came-back", later: "still-there", part: "no-help" }[outcome as string];
  if (!back) return null;
  return (
    <div class="answers">
      {outcome === "later" && (
        <button type="button" class="own" disabled={busy} onClick={actions.reportIce}>
          {texts("part.it-works")}
        </button>
      )}
      <button type="button" class="own" disabled={busy} onClick={actions.reportTrouble}>
        {texts(`part.${back}`)}
      </button>
    </div>
  );
}

/** What was found. Only where a part is proved does a finding prove; else it points to the cause. */
function Found({ found, isProof, texts }: { found: Evidence[]; isProof: boolean; texts: Texts }) {
  return (
    <ul class="evidence">
      {found.map((each) => (
        <li key={`${each.turn} ${each.found}`} class={each.proves ? "proves" : ""}>
          <span>{each.check}</span> <b>{each.found}</b>
          {each.proves && <em>{isProof ? texts("part.proves") : texts("part.points")}</em>}
        </li>
      ))}
    </ul>
  );
}
