import { Component, type ComponentType } from "preact";
import type { Turn } from "../../turn/index.ts";

type Props = { turn: Turn };

/** A machine has a tank or one of the others: while the path has both, nobody knows what to draw. */
const [tank, plumbed] = ["tank", ["stop-tap", "filter"]];

/** Whether there is something to show inside the machine: the opening knows of no station, and maybe nobody knows where the water comes from. */
export const saysSomething = ({ path }: Pick<Turn, "path">): boolean =>
  path.some(({ here, state }) => here || state !== "unseen") &&
  !(path.some(({ station }) => station === tank) && path.some(({ station }) => plumbed.includes(station)));

/**
 * Makes the column beside the thread. It is in every panel, and has a box only where the panel is wide enough
 * (beside.css): what stands in it is asked for then, and not before. Where it does not come the column goes, until the
 * next turn.
 * @param bring resolves with what draws a turn there
 */
export function createBeside(bring: () => Promise<ComponentType<Props>>) {
  let Scene: ComponentType<Props> | null = null;
  return class Beside extends Component<Props, { isGone?: boolean }> {
    #column: HTMLElement | null = null;
    #eye: ResizeObserver | null = null;

    override componentDidMount(): void {
      if (Scene || !this.#column) return;
      this.#eye = new ResizeObserver(() => this.#column?.offsetWidth && void this.#bring());
      this.#eye.observe(this.#column);
    }

    override componentWillUnmount(): void {
      this.#eye?.disconnect();
    }

    async #bring(): Promise<void> {
      this.#eye?.disconnect();
      Scene = await bring().catch(() => null);
      this.setState({ isGone: !Scene });
    }

    override render({ turn }: Props) {
      return (
        !this.state.isGone && (
          <div
            class={saysSomething(turn) ? "beside" : "beside shut"}
            ref={(column) => {
              this.#column = column;
            }}
          >
            {Scene && <Scene turn={turn} />}
          </div>
        )
      );
    }
  };
}
