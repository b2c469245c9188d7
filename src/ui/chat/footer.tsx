import { useRef, useState } from "preact/hooks";
import type { Actions, Texts, View } from "../../session/index.ts";
import { Alert } from "./alert.tsx";
import type { Way } from "./screens.ts";
import { WayOut } from "./way-out.tsx";

type Props = { view: View; actions: Actions; texts: Texts };

/** The ways out that every turn has. Each asks in place before it acts; none waits for the engine to ask. */
export function Footer({ view, actions, texts }: Props) {
  const [asking, setAsking] = useState<Way | null>(null);
  const opener = useRef<HTMLElement | null>(null);
  const ways: Way[] = [...view.ways, "restart"];
  const leave = (act?: () => void) => {
    setAsking(null);
    opener.current?.focus();
    act?.();
  };
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
        <WayOut key={asking} way={asking} view={view} actions={actions} texts={texts} leave={leave} />
      )}
    </footer>
  );
}
