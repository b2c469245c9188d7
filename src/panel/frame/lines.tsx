import { useRef, useState } from "preact/hooks";
import type { Line, Texts } from "../../turn/index.ts";
import { Ask } from "./ask.tsx";

/** More lines than this push the turn off a phone's screen: then only the last two stay in sight. */
const LINES_IN_SIGHT = 3;

type Props = { lines: Line[]; change(index: number): void; texts: Texts };

/** Earlier turns, folded to a line each. */
export function Lines({ lines, change, texts }: Props) {
  const [open, setOpen] = useState(false);
  const folded = lines.length > LINES_IN_SIGHT ? lines.length - 2 : 0;
  const shown = open ? lines : lines.slice(folded);
  return (
    <>
      {folded > 0 && (
        <button type="button" class="quiet fold" aria-expanded={open} onClick={() => setOpen(!open)}>
          {texts("ui.earlier", { count: folded })}
        </button>
      )}
      {shown.length > 0 && (
        // biome-ignore lint/a11y/noRedundantRoles: Safari drops the list from its speech once the markers are gone.
        <ol role="list" class="lines" start={lines.length - shown.length + 1}>
          {shown.map((line) => (
            <EarlierTurn key={`${line.index} ${line.turn}`} line={line} change={change} texts={texts} />
          ))}
        </ol>
      )}
    </>
  );
}

function EarlierTurn({ line, change, texts }: { line: Line } & Omit<Props, "lines">) {
  const [asking, setAsking] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const close = () => {
    setAsking(false);
    opener.current?.focus();
  };
  return (
    <li>
      <p>
        <span>{line.title}</span> <b>{line.answer}</b>
      </p>
      {line.canChange && (
        <button
          ref={opener}
          type="button"
          class="quiet"
          aria-label={`${texts("ui.change")}: ${line.title}`}
          onClick={() => (line.drops ? setAsking(true) : change(line.index))}
        >
          {texts("ui.change")}
        </button>
      )}
      {asking && line.canChange && (
        <Ask text={texts("ui.drops", { count: line.drops })}>
          <button
            type="button"
            class="main"
            onClick={() => {
              close();
              change(line.index);
            }}
          >
            {texts("ui.change-anyway")}
          </button>
          <button type="button" onClick={close}>
            {texts("ui.keep")}
          </button>
        </Ask>
      )}
    </li>
  );
}
