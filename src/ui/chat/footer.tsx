import { useRef, useState } from "preact/hooks";
import type { Actions, Texts, View } from "../../session/index.ts";
import { Alert } from "./alert.tsx";
import { Ask } from "./ask.tsx";

type Way = "danger" | "ice" | "help" | "restart";

/** The ways out that every turn has. Each asks in place before it acts. */
export function Footer({ view, actions, texts }: { view: View; actions: Actions; texts: Texts }) {
  const [asking, setAsking] = useState<Way | null>(null);
  const opener = useRef<HTMLElement | null>(null);
  const ways: Way[] = view.canReportIce
    ? ["danger", "ice", "help", "restart"]
    : ["danger", "help", "restart"];
  const leave = (act?: () => void) => () => {
    setAsking(null);
    opener.current?.focus();
    act?.();
  };
  const confirmed = { ice: actions.reportIce, help: actions.askForHelp, restart: actions.restart };
  return (
    <footer>
      {ways.map((way) => (
        <button
          key={way}
          type="button"
          class={`quiet ${way}`}
          aria-expanded={asking === way}
          onClick={(event) => {
            opener.current = event.currentTarget;
            setAsking(way);
          }}
        >
          {way === "danger" && <Alert />}
          {texts(`ui.${way}`)}
        </button>
      ))}
      {asking && (
        <Ask key={asking} text={texts(`ui.${asking}-ask`)}>
          {asking === "danger" ? (
            view.dangers.map(({ id, text }) => (
              <button key={id} type="button" class="own" onClick={leave(() => actions.reportDanger(id))}>
                {text}
              </button>
            ))
          ) : (
            <button type="button" class="main" onClick={leave(() => confirmed[asking]())}>
              {texts(`ui.${asking}-yes`)}
            </button>
          )}
          <button type="button" onClick={leave()}>
            {texts("ui.cancel")}
          </button>
        </Ask>
      )}
    </footer>
  );
}
