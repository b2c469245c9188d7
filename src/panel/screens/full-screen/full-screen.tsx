import { Component } from "preact";
import type { MoreProps } from "../../frame/index.ts";
import { passOver } from "./back-entries.ts";
import { Whole } from "./whole.ts";

/** `left` is over once nothing of the last time is left in the tab's history; `watching` counts who keeps watch. */
type Window = { whole?: Whole; left?: Promise<unknown>; watching: number };

/** By panel. A stop draws the bar, and this in it, anew. */
const windows = new WeakMap<Node, Window>();

const canOpen = () => typeof HTMLDialogElement === "function" && "showModal" in HTMLDialogElement.prototype;

/** The menu's entry that has the panel fill a phone's window; it keeps watch while it does. */
export class FullScreen extends Component<MoreProps> {
  #place: HTMLElement | null = null;
  #of: Window = { watching: 0 };

  override componentDidMount(): void {
    passOver(window);
    const panel = this.#place?.closest(".panel");
    if (!panel) return;
    this.#of = windows.get(panel) ?? this.#of;
    windows.set(panel, this.#of);
    this.#of.watching++;
    this.#of.whole?.heed(this.props);
  }

  override componentDidUpdate(): void {
    this.#of.whole?.heed(this.props);
  }

  override componentWillUnmount(): void {
    const of = this.#of;
    of.watching--;
    queueMicrotask(() => of.watching === 0 && of.whole?.close());
  }

  async #open(): Promise<void> {
    const of = this.#of;
    await of.left;
    const panel = this.#place?.closest<HTMLElement>(".panel");
    if (!panel || of.whole) return;
    of.whole = new Whole(panel, this.props, (left) => {
      delete of.whole;
      of.left = left;
    });
  }

  override render({ isListed, texts, leave }: MoreProps) {
    const isThere = isListed && canOpen();
    return (
      <div
        class={isThere ? "ask full" : "full"}
        ref={(place) => {
          this.#place = place;
        }}
      >
        {isThere && (
          <button type="button" class="quiet" onClick={() => leave(() => void this.#open())}>
            {texts("thread.full")}
          </button>
        )}
      </div>
    );
  }
}
