import { useRef, useState } from "preact/hooks";
import type { Actions, Texts, View } from "../../session/index.ts";
import { Alert } from "./alert.tsx";
import type { Screens, Way } from "./screens.ts";

type Props = { view: View; actions: Actions; texts: Texts; wayOut: Screens["wayOut"] | undefined };

/** The ways out that every turn has. Each asks in place before it acts, as soon as `wayOut` has come to ask. */
export function Footer({ view, actions, texts, wayOut: WayOut }: Props) {
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
      {asking &&
        (WayOut ? (
          <WayOut key={asking} way={asking} view={view} actions={actions} texts={texts} leave={leave} />
        ) : (
          <p class="loading">{texts("ui.loading")}</p>
        ))}
    </footer>
  );
}
