import { useEffect, useRef, useState } from "preact/hooks";
import type { Ending, Evidence, PathMark, Texts, Turn } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { PartCard, ShopHelp } from "../part/index.ts";
import { showList } from "../reading/index.ts";
import { WaitScreen } from "../wait/index.ts";

/** How it ended: the cause, what was found, whom to call, and a summary to take along. */
export function EndingScreen(props: ScreenProps) {
  const { turn, actions, busy, services, texts } = props;
  const { ending } = turn;
  if (!ending) return null;
  const wait = <WaitScreen {...props} />;
  const found = [...ending.evidence].sort((a, b) => Number(b.proves) - Number(a.proves));
  return (
    <>
      {ending.cause && (
        <p>
          {ending.outcome !== "fixed" && <b>{texts("part.cause")}</b>} {ending.cause}
        </p>
      )}
      {ending.part && (
        <PartCard wanted={ending.part} actions={actions} busy={busy} services={services} texts={texts} />
      )}
      {ending.outcome === "later" && wait}
      {ending.who && (
        <div class="card who">
          <h3>{texts("part.who")}</h3>
          <p>{ending.who}</p>
        </div>
      )}
      {ending.likely.length > 0 && (
        <div class="card likely">
          <h3>{texts("part.likely")}</h3>
          <ol>
            {ending.likely.map(({ causeId, cause, part }) => (
              <li key={causeId}>
                {cause} {part && texts("part.bring", { part })}
              </li>
            ))}
          </ol>
        </div>
      )}
      {(ending.part || ending.outcome === "professional") && <Glance path={turn.path} texts={texts} />}
      {ending.outcome === "professional" && <ShopHelp services={services} texts={texts} />}
      {found.length > 0 && (
        <Found
          found={found}
          heading={texts(ending.part ? "part.why" : "part.found")}
          isProof={ending.part?.claim === "proved"}
          texts={texts}
        />
      )}
      <div class="dock">
        <WaysOn outcome={ending.outcome} actions={actions} busy={busy} texts={texts} />
        <Summary text={summaryOf(turn, found, texts)} texts={texts} />
      </div>
    </>
  );
}

/** What the search has cleared, and where nobody has looked. */
function Glance({ path, texts }: { path: PathMark[]; texts: Texts }) {
  const say = (key: string, states: PathMark["state"][]) => {
    const stations = path.flatMap(({ station, state }) =>
      states.includes(state) ? [texts(`thread.at.${station}`)] : [],
    );
    return stations[0] && <li>{texts(`thread.${key}`, { stations: showList(texts, stations) })}</li>;
  };
  return (
    <ul class="glance">
      {say("ruled-out", ["clear", "fixed"])}
      {say("not-tried", ["unseen"])}
    </ul>
  );
}

/** Nothing is over for good: whoever comes back goes on where they were. */
function WaysOn({
  outcome,
  actions,
  busy,
  texts,
}: Pick<ScreenProps, "actions" | "busy" | "texts"> & { outcome: Ending["outcome"] }) {
  if (outcome !== "fixed" && outcome !== "later") return null;
  return (
    <div class="answers">
      {outcome === "later" && (
        <button type="button" class="own" disabled={busy} onClick={actions.reportIce}>
          {texts("part.it-works")}
        </button>
      )}
      <button type="button" class="own" disabled={busy} onClick={actions.reportTrouble}>
        {texts(outcome === "later" ? "part.still-there" : "part.came-back")}
      </button>
    </div>
  );
}

type FoundProps = { found: Evidence[]; heading: string; isProof: boolean; texts: Texts };

/** What was found. Only where a part is proved does a finding prove; else it points to the cause. */
function Found({ found, heading, isProof, texts }: FoundProps) {
  return (
    <>
      <h3>{heading}</h3>
      <ul class="evidence">
        {found.map((each) => (
          <li key={`${each.turn} ${each.found}`} class={each.proves ? "proves" : ""}>
            <span>{each.check}</span> <b>{each.found}</b>
            {each.proves && <em>{isProof ? texts("part.proves") : texts("part.points")}</em>}
          </li>
        ))}
      </ul>
    </>
  );
}

/** The ending in plain text, for a message to a shop or a repairer. */
function summaryOf({ heading, ending }: Turn, found: Evidence[], texts: Texts): string {
  const lines = [
    heading,
    ending?.cause && (ending.outcome === "fixed" ? "" : `${texts("part.cause")} `) + ending.cause,
    ...(ending?.likely ?? []).map(({ cause, part }, place) =>
      [`${place + 1}. ${cause}`, part && texts("part.bring", { part })].filter(Boolean).join(" "),
    ),
    ending?.part?.model && `${texts("part.model")} ${ending.part.model}`,
    ending?.part && `${texts("part.kind")} ${ending.part.name}`,
    "",
    ...found.map((each) => `- ${each.check}: ${each.found}`),
  ];
  return lines.filter((line) => line !== null && line !== undefined).join("\n");
}

/** Copies, or where the page may not, shows the text selected so that a long press can. */
function Summary({ text, texts }: { text: string; texts: Texts }) {
  const [state, setState] = useState<"" | "copied" | "shown">("");
  const area = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    if (state === "shown") area.current?.select();
  }, [state]);
  async function copy() {
    try {
      await navigator.clipboard.writeText(text);
      setState("copied");
    } catch {
      setState("shown");
    }
  }
  return (
    <div class="summary">
      <button type="button" onClick={copy}>
        {texts("part.copy")}
      </button>
      <p role="status" class="small">
        {state && texts(`part.${state}`)}
      </p>
      {state === "shown" && (
        <textarea ref={area} readOnly rows={8} aria-label={texts("part.summary")} value={text} />
      )}
    </div>
  );
}
