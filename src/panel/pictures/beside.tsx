import { Component, type ComponentType } from "preact";
import type { PathMark, Turn } from "../../turn/index.ts";

type Props = { turn: Turn };

/** A machine has a tank or one of the others: never both. */
const [tank, plumbed] = [["tank"], ["stop-tap", "filter"]];

/**
 * The stations of this machine, of a path that may have more: while nobody knows where the water comes from it has both
 * those of a tank and those of a tap. Then the turn's own station tells, if it can; else there are none.
 */
export function stationsOf({ path }: Pick<Turn, "path">): PathMark[] {
  const has = (stations: string[], marks = path) => marks.some(({ station }) => stations.includes(station));
  if (!has(tank) || !has(plumbed)) return path;
  const here = path.filter((mark) => mark.here);
  if (has(tank, here)) return path.filter(({ station }) => !plumbed.includes(station));
  return has(plumbed, here) ? path.filter(({ station }) => !tank.includes(station)) : [];
}

/** Whether there is something to show inside the machine: the opening knows of no station. */
export const saysSomething = (turn: Pick<Turn, "path">): boolean =>
  stationsOf(turn).some(({ here, state }) => here || state !== "unseen");

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
