import { useState } from "preact/hooks";
import { IcePath } from "../../panel/pictures/index.ts";
import { boardOf, modelIn } from "../board/index.ts";
import { Causes } from "./causes.tsx";
import type { RoomProps } from "./props.ts";
import { Chart, Parts, Record } from "./records.tsx";
import { Said } from "./said.tsx";
import { Suggest } from "./suggest.tsx";

const tabs = ["causes", "chart", "journal", "parts"] as const;

/** What is known of their machine, what may be suggested, and what was said between the two. */
export function Known(props: RoomProps) {
  const { acts, texts } = props;
  const { followed, key } = acts.room;
  return (
    <section class="known" aria-label={texts("desk.bar.known")}>
      <div class="bar">
        <b>{texts("desk.bar.known")}</b>
        <small>{modelIn(followed?.session ?? null) ?? ""}</small>
      </div>
      <div class="scroll">
        {followed && (
          <>
            <State followed={followed} texts={texts} />
            <Tabs key={key} {...props} followed={followed} />
            <Suggest
              key={`suggest ${key}`}
              {...props}
              followed={followed}
              board={boardOf(followed.session, texts)}
            />
          </>
        )}
        <Said {...props} />
      </div>
    </section>
  );
}

type Viewed = NonNullable<RoomProps["acts"]["room"]["followed"]>;

/** What we had changed in their home, and the ice path. */
function State({ followed: { view, session }, texts }: { followed: Viewed; texts: RoomProps["texts"] }) {
  const { turn } = view;
  if (!turn) return null;
  const { found } = boardOf(session, texts);
  const label = turn.path.flatMap(({ station, name }) =>
    found[station] ? `${name}: ${found[station]}.` : [],
  );
  return (
    <>
      {turn.changed[0] && (
        <ul class="chips">
          {turn.changed.map(({ id, text }) => (
            <li key={id}>{text}</li>
          ))}
        </ul>
      )}
      {turn.path[0] && <IcePath path={turn.path} label={[turn.pathText, ...label].join(" ")} found={found} />}
    </>
  );
}

/** One of four at a time; the arrow keys go from one to the next. */
function Tabs(props: RoomProps & { followed: Viewed }) {
  const { followed, texts } = props;
  const [open, setOpen] = useState<(typeof tabs)[number]>("causes");
  const { causes, chart } = boardOf(followed.session, texts);
  const go = (event: KeyboardEvent & { currentTarget: HTMLElement }) => {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    const next = step && tabs[(tabs.indexOf(open) + step + tabs.length) % tabs.length];
    if (!next) return;
    event.preventDefault();
    setOpen(next);
    event.currentTarget.querySelector<HTMLElement>(`[id="tab-${next}"]`)?.focus();
  };
  return (
    <div class="tabbed">
      <div role="tablist" aria-label={texts("desk.tabs.label")} onKeyDown={go}>
        {tabs.map((tab) => (
          <button
            key={tab}
            type="button"
            role="tab"
            id={`tab-${tab}`}
            aria-selected={open === tab}
            aria-controls="tab-panel"
            tabIndex={open === tab ? 0 : -1}
            onClick={() => setOpen(tab)}
          >
            {texts(`desk.tabs.${tab}`)}
          </button>
        ))}
      </div>
      <div role="tabpanel" id="tab-panel" aria-labelledby={`tab-${open}`}>
        <h2>{texts(`desk.${open}.title`)}</h2>
        {open === "causes" && <Causes causes={causes} texts={texts} />}
        {open === "chart" && <Chart chart={chart} texts={texts} />}
        {open === "journal" && <Record {...props} />}
        {open === "parts" && <Parts {...props} />}
      </div>
    </div>
  );
}
