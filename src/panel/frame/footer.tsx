import { Component } from "preact";
import type { Actions, Texts, View } from "../../turn/index.ts";
import { Alert } from "./alert.tsx";
import type { Way } from "./screens.ts";
import { WayOut } from "./way-out.tsx";

type Props = { view: View; actions: Actions; texts: Texts };

/** The ways out that every turn has. Each asks in place before it acts; none waits for the engine to ask. */
export class Footer extends Component<Props, { asking: Way | null }> {
  #opener: HTMLElement | null = null;

  readonly #leave = (act?: () => void) => {
    this.setState({ asking: null });
    this.#opener?.focus();
    act?.();
  };

  /** The same at almost every turn; what is asked in it stays true to the view. */
  override shouldComponentUpdate({ view, texts }: Props, { asking }: { asking?: Way | null }): boolean {
    const { props, state } = this;
    return Boolean(
      asking || state.asking || texts !== props.texts || `${view.ways}` !== `${props.view.ways}`,
    );
  }

  override render({ view, actions, texts }: Props) {
    const { asking } = this.state;
    const ways: Way[] = [...view.ways, "restart"];
    return (
      <footer>
        {ways.map((way) => (
          <button
            key={way}
            type="button"
            class={`quiet ${way}`}
            aria-expanded={asking === way}
            onClick={(event) => {
              this.#opener = event.currentTarget;
              this.setState({ asking: way });
            }}
          >
            {way === "danger" && <Alert />}
            {texts(`ui.${way}`)}
          </button>
        ))}
        {asking && (
          <WayOut key={asking} way={asking} view={view} actions={actions} texts={texts} leave={this.#leave} />
        )}
      </footer>
    );
  }
}
