import { Component, type ComponentChildren } from "preact";
import { type Live, type LiveRoom, showList, type Texts } from "../../turn/index.ts";
import type { MoreProps } from "../frame/index.ts";
import { adopt } from "./adopt.ts";
import { Code } from "./code.tsx";
import { Talk } from "./talk.tsx";

type Props = MoreProps & { live: Live };

/** Whether what was written is shown, and whether an answer is slow to come. */
type State = { isOpen: boolean; isSlow: boolean };

/** Milliseconds without an answer after which it is said that it does not come. */
const PATIENCE_MS = 8000;

/** Makes what stands below the bar while the shop's people help. @param sheet its rules */
export function createLiveBar(sheet: CSSStyleSheet) {
  return class LiveBar extends Component<Props, State> {
    override state: State = { isOpen: false, isSlow: false };
    #box: HTMLElement | null = null;
    #head: HTMLElement | null = null;
    #slow: ReturnType<typeof setTimeout> | undefined;

    override componentDidMount(): void {
      adopt(this.#box, sheet);
      this.#slow = setTimeout(() => this.setState({ isSlow: true }), PATIENCE_MS);
      const { activeElement } = (this.#box?.getRootNode() ?? {}) as Partial<DocumentOrShadowRoot>;
      // Whoever has just tapped for it is led here; a page that is loaded again is left alone.
      if (activeElement && this.#box?.closest(".panel")?.contains(activeElement)) this.#head?.focus();
    }

    override componentDidUpdate(): void {
      adopt(this.#box, sheet);
    }

    override componentWillUnmount(): void {
      clearTimeout(this.#slow);
    }

    /** A button that may go by what it does: the words it was about get the focus. */
    #button(text: string, act: () => void, look = "", disabled = false) {
      const { texts } = this.props;
      return (
        <button
          type="button"
          class={look}
          aria-disabled={disabled}
          onClick={() => {
            this.#head?.focus();
            act();
          }}
        >
          {texts(`live.${text}`)}
        </button>
      );
    }

    override render({ live, services, texts }: Props, { isOpen, isSlow }: State) {
      const room = live.room();
      if (!room) return null;
      const names = namesOf(room.inside, texts);
      const isIn = room.is === "open" && names !== "";
      const last = room.lines.findLast(({ name }) => name !== null);
      return (
        <section
          class="live"
          aria-label={texts("live.title")}
          ref={(box) => {
            this.#box = box;
          }}
        >
          <div class="live-row">
            <p
              role="status"
              class="live-head"
              tabIndex={-1}
              ref={(head) => {
                this.#head = head;
              }}
            >
              <b>{headOf(room, names, isSlow, texts)}</b>
            </p>
            {isIn && this.#button(room.isPaused ? "go-on" : "pause", () => live.pause(!room.isPaused))}
            {isIn && this.#button("end", live.end)}
          </div>
          {room.is === "open" && !room.isUp && <p class="small">{texts("live.no-line")}</p>}
          {room.isFull && <p class="small">{texts("live.full")}</p>}
          {this.#body(room, isIn)}
          {isIn && (
            <>
              {!isOpen && last && (
                <p role="status" class="live-last">
                  <span class="from">{last.name}</span> <bdi>{last.text}</bdi>
                </p>
              )}
              <button
                type="button"
                class="quiet fold-talk"
                aria-expanded={isOpen}
                onClick={() => this.setState({ isOpen: !isOpen })}
              >
                {texts(isOpen ? "live.fold" : "live.write", { names })}
              </button>
              {isOpen && <Talk room={room} names={names} live={live} services={services} texts={texts} />}
            </>
          )}
        </section>
      );
    }

    #body(room: LiveRoom, isIn: boolean): ComponentChildren {
      const { live, services, texts } = this.props;
      const [door] = room.asking;
      if (room.is === "elsewhere")
        return (
          <Buttons>
            {this.#button("bring", live.bringHere)}
            {this.#button("close", live.end, "quiet")}
          </Buttons>
        );
      if (room.is === "ended" || room.is === "unable" || room.is === "unused")
        return (
          <>
            {room.is === "unable" && <ShopLink {...this.props} />}
            <Buttons>
              {room.is === "unused" && this.#button("again", () => again(live))}
              {this.#button("close", live.end, "quiet")}
            </Buttons>
          </>
        );
      if (room.is === "open" && door)
        return (
          <>
            <p>{texts("live.will-see")}</p>
            <div class="ask">
              <button
                type="button"
                class="main"
                onClick={() => {
                  this.#head?.focus();
                  live.letIn(door.id);
                }}
              >
                {texts("live.let-in", { name: door.name })}
              </button>
              {this.#button("turn-away", () => live.turnAway(door.id))}
            </div>
          </>
        );
      if (isIn) return null;
      const isOut = room.is === "open" && (!room.code || room.code.until < Date.parse(services.now()));
      return (
        <>
          {room.is === "open" && room.code && <Code code={room.code} services={services} texts={texts} />}
          {room.is === "coming" && this.state.isSlow && <ShopLink {...this.props} />}
          <Buttons>
            {isOut && this.#button("new-code", live.newCode)}
            {this.#button("stop", live.end, "quiet")}
          </Buttons>
        </>
      );
    }
  };
}

const Buttons = ({ children }: { children: ComponentChildren }) => <div class="ask">{children}</div>;

function again(live: Live): void {
  live.end();
  live.ask("help");
}

function namesOf(people: LiveRoom["inside"], texts: Texts): string {
  return showList(
    texts("ui.locale"),
    people.map(({ name }) => name),
  );
}

/** How it stands, in a few words. */
function headOf(room: LiveRoom, names: string, isSlow: boolean, texts: Texts): string {
  const [door] = room.asking;
  if (room.is === "coming") return texts(isSlow ? "live.slow" : "live.coming");
  if (room.is !== "open") return texts(`live.${room.is}`);
  if (door) return texts("live.asks", { name: door.name });
  if (names && room.isPaused) return texts("live.paused", { names });
  if (names) return texts(room.inside[1] ? "live.see" : "live.sees", { names });
  if (room.left) return texts("live.has-left", { name: room.left });
  return texts(room.code ? "live.waiting" : "live.nobody");
}

/** Where nobody can be had this way: the shop's help as ever. */
function ShopLink({ services, texts }: Pick<Props, "services" | "texts">) {
  const { name, link } = services.shopHelp;
  const said = texts("ui.shop-help", { shop: name || texts("ui.shop") });
  return <p>{link ? <a href={link}>{said}</a> : said}</p>;
}
