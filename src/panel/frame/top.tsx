import { Component } from "preact";
import type { Actions, Services, Texts, View } from "../../turn/index.ts";
import { Alert } from "./alert.tsx";
import type { Screens, Way } from "./screens.ts";
import { WayOut } from "./way-out.tsx";

type Props = {
  view: View;
  actions: Actions;
  services: Services;
  texts: Texts;
  more: Screens["more"] | undefined;
};

/**
 * The bar above every turn: the mark, the name, the way out of a danger, and a menu of the other ways. Each asks in place
 * before it acts; none waits for the engine to ask.
 */
export class Top extends Component<Props, { asking: Way | "menu" | null }> {
  #opener: HTMLElement | null = null;

  readonly #leave = (act?: () => void) => {
    this.setState({ asking: null });
    this.#opener?.focus();
    act?.();
  };

  override render({ view, actions, texts }: Props) {
    const { asking } = this.state;
    const { more: More } = this.props;
    const others: Way[] = [...view.ways.filter((way) => way !== "danger"), "restart"];
    /** A second tap on what is open shuts it. */
    const opens = (way: Way | "menu") => ({
      type: "button" as const,
      class: `quiet ${way}`,
      "aria-expanded": asking === way,
      onClick: (event: { currentTarget: HTMLElement }) => {
        if (way === "menu" || way === "danger") this.#opener = event.currentTarget;
        this.setState({ asking: asking === way ? null : way });
      },
    });
    return (
      <header part="bar">
        <svg class="logo" viewBox="0 0 24 24" aria-hidden="true">
          <path fill="#1c98d4" d="m12 1 10 5.5v11L12 23 2 17.5v-11z" />
          <path fill="#9de2fb" d="m12 1 10 5.5L12 12 2 6.5z" />
        </svg>
        <b>{texts("ui.title")}</b>
        {view.ways.includes("danger") && (
          <button {...opens("danger")}>
            <Alert />
            {texts("ui.danger")}
          </button>
        )}
        <button {...opens("menu")}>{texts("ui.menu")}</button>
        {asking === "menu" ? (
          <div class="ask">
            {others.map((way) => (
              <button key={way} {...opens(way)}>
                {texts(`ui.${way}`)}
              </button>
            ))}
          </div>
        ) : (
          asking && (
            <WayOut
              key={asking}
              way={asking}
              view={view}
              actions={actions}
              texts={texts}
              leave={this.#leave}
            />
          )
        )}
        {More && <More {...this.props} isListed={asking === "menu"} leave={this.#leave} />}
      </header>
    );
  }
}
