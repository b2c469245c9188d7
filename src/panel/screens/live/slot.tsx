import { Component, type ComponentChildren, type ComponentType } from "preact";
import type { Live, Texts } from "../../../turn/index.ts";
import type { ComposerProps, MoreProps } from "../../frame/index.ts";

/** What is shown while the shop's people help: below the bar at the top, and above the field at the end. */
export type LiveParts = {
  LiveBar: ComponentType<MoreProps & { live: Live }>;
  LiveCards: ComponentType<ComposerProps & { live: Live }>;
};

/** Milliseconds between two tries to fetch them. */
const PAUSE_MS = 5000;

/**
 * Makes the places for them. They are empty until somebody is asked for help, and what stands in them is fetched then.
 * @param bring resolves with what stands there, once its texts are there too
 */
export function createLiveSlots(bring: (texts: Texts) => Promise<LiveParts>) {
  /** By whose texts came with them. */
  const brought = new WeakMap<Texts, LiveParts>();

  type Props = { live: Live; texts: Texts; says: boolean; show(parts: LiveParts): ComponentChildren };
  class Slot extends Component<Props, { isLost?: boolean }> {
    #unwatch = () => {};
    #retry: ReturnType<typeof setTimeout> | undefined;
    #isComing = false;

    override componentDidMount(): void {
      this.#unwatch = this.props.live.watch(() => this.setState({}));
      void this.#bring();
    }

    override componentDidUpdate(): void {
      void this.#bring();
    }

    override componentWillUnmount(): void {
      this.#unwatch();
      clearTimeout(this.#retry);
    }

    async #bring(): Promise<void> {
      const { texts, live } = this.props;
      if (brought.has(texts) || this.#isComing || !live.room()) return;
      this.#isComing = true;
      const parts = await bring(texts).catch(() => null);
      if (parts) brought.set(texts, parts);
      this.setState({ isLost: !parts });
      if (parts) return;
      this.#retry = setTimeout(() => {
        this.#isComing = false;
        void this.#bring();
      }, PAUSE_MS);
    }

    override render({ live, texts, says, show }: Props, { isLost }: { isLost?: boolean }) {
      if (!live.room()) return null;
      const parts = brought.get(texts);
      if (parts) return show(parts);
      return says && <p class="loading ask">{texts(isLost ? "ui.lost" : "ui.loading")}</p>;
    }
  }

  return {
    /** Below the bar. */
    UnderBar: (props: MoreProps) => {
      const { live } = props.services;
      return (
        live && (
          <Slot
            live={live}
            texts={props.texts}
            says
            show={({ LiveBar }) => <LiveBar {...props} live={live} />}
          />
        )
      );
    },
    /** Above the field at the panel's end. */
    AboveField: (props: ComposerProps) => {
      const { live } = props.services;
      return (
        live && (
          <Slot
            live={live}
            texts={props.texts}
            says={false}
            show={({ LiveCards }) => <LiveCards {...props} live={live} />}
          />
        )
      );
    },
  };
}
