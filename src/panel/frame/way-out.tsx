import type { Actions, Texts, View } from "../../turn/index.ts";
import { Ask } from "./ask.tsx";
import type { Way } from "./screens.ts";

type Props = { way: Way; view: View; actions: Actions; texts: Texts; leave(act?: () => void): void };

/** What a way out asks, in place, before it acts. */
export function WayOut({ way, view, actions, texts, leave }: Props) {
  const confirmed = { ice: actions.reportIce, help: actions.askForHelp, restart: actions.restart };
  return (
    <Ask text={texts(`ui.${way}-ask`)}>
      {way === "danger" ? (
        view.dangers.map(({ id, text }) => (
          <button key={id} type="button" class="own" onClick={() => leave(() => actions.reportDanger(id))}>
            {text}
          </button>
        ))
      ) : (
        <button type="button" class="main" onClick={() => leave(() => confirmed[way]())}>
          {texts(`ui.${way}-yes`)}
        </button>
      )}
      <button type="button" onClick={() => leave()}>
        {texts("ui.cancel")}
      </button>
    </Ask>
  );
}
