import { Component } from "preact";
import {
  type AsideAbout,
  fillIn,
  longestWords,
  machineTurn,
  type Reply,
  replyTo,
  type Words,
} from "../../../turn/index.ts";
import type { ComposerProps } from "../../frame/index.ts";
import { contextOf, modelsIn, openAmong } from "./context.ts";
import { pricedAt } from "./priced.ts";
import { ReadAloud } from "./read-aloud.tsx";

/** One more than is read, as in every field. */
const most = longestWords + 1;

/** Its name in a draft. */
const name = "own-words";

type State = {
  typed: string;
  /** What was sent last, and what is said to it; null while it is read, and before anything was sent. */
  sent: string;
  reply: Reply | "away" | null;
  words: Words | null;
  /** What the answer to a side question depends on. */
  about: AsideAbout;
  isReading: boolean;
};

const nothingSent = { sent: "", reply: null };

/**
 * The field at the panel's end, where anything can be said at any turn, and what is said to it. What is typed is read on
 * the device; it takes no answer that was not its own wording, and passes no gate.
 */
export class Composer extends Component<ComposerProps, State> {
  override state: State = {
    typed: this.props.services.draft.read(this.props.turn.turn)[name] ?? "",
    words: null,
    about: {},
    isReading: false,
    ...nothingSent,
  };
  #form: HTMLFormElement | null = null;

  override componentDidMount(): void {
    for (const event of ["resize", "scroll"]) window.visualViewport?.addEventListener(event, this.#rise);
    // A keyboard may be up before the field is there.
    this.#rise();
  }

  override componentWillUnmount(): void {
    for (const event of ["resize", "scroll"]) window.visualViewport?.removeEventListener(event, this.#rise);
  }

  override componentDidUpdate({ turn }: ComposerProps): void {
    const { reply } = this.state;
    const { turn: now, view } = this.props;
    if (turn.turn === now.turn || !reply || reply === "away") return;
    // What was told besides is asked about at the next turn; all else was said to the turn before.
    const isOpen = reply.kind === "facts" && openAmong(reply.facts, view)[0];
    if (!isOpen) this.setState(nothingSent);
  }

  /** A phone's keyboard lies over the window: what stands at its foot has to stand above that. */
  readonly #rise = () => {
    const { height = innerHeight, offsetTop = 0, scale = 1 } = window.visualViewport ?? {};
    // Somebody who has enlarged the page sees a part of it.
    const covered = scale > 1.05 ? 0 : Math.max(0, Math.round(innerHeight - height - offsetTop));
    this.#form?.style.setProperty("bottom", `${covered}px`);
  };

  readonly #type = (typed: string) => {
    this.props.services.draft.keep(this.props.turn.turn, name, typed);
    this.setState({ typed });
  };

  /** What understands sentences is fetched once somebody is about to type one. */
  readonly #prepare = () => void this.props.services.words().catch(() => null);

  readonly #decide = (reply: Reply | null) => {
    const { turn, services, actions, refill } = this.props;
    if (reply?.kind === "taken") {
      this.setState(nothingSent);
      actions.answer(turn.turn, reply.answer);
      return;
    }
    if (reply?.kind === "filled") {
      fillIn(services.draft, turn.turn, this.state.sent, reply.entries);
      refill();
    }
    if (reply?.kind === "none") actions.tell({ words: this.state.sent, facts: [] });
    this.setState(reply ? { reply } : nothingSent);
  };

  async #send(): Promise<void> {
    const { typed, isReading } = this.state;
    const sent = typed.trim();
    if (!sent || isReading) return;
    this.setState({ isReading: true, sent, reply: null });
    try {
      const { services } = this.props;
      const words = await services.words();
      // Whoever has tapped meanwhile is at another turn: the words are read as they are meant there.
      const read = (models: ReadonlyMap<string, string>) => {
        const { turn, view } = this.props;
        return replyTo(words.understand(sent, contextOf(turn, view, services.now(), models)));
      };
      let reply = read(new Map());
      let about: AsideAbout = {};
      // No list of parts may hold up a danger.
      if (reply.kind !== "danger") {
        const codes = words.codesIn(sent);
        if (codes[0]) reply = read(await modelsIn(codes, services));
        if (reply.kind === "aside") about = await pricedAt(this.props.turn, services, this.props.texts);
      }
      this.#type("");
      this.setState({ words, about, isReading: false });
      this.#decide(reply);
    } catch {
      this.setState({ isReading: false, reply: "away" });
    }
  }

  override render({ heard: Heard, refill: _, ...props }: ComposerProps, state: State) {
    const { texts, turn } = props;
    const { typed, sent, reply, words, about, isReading } = state;
    if (turn.turn === machineTurn) return null;
    return (
      <form
        class="composer"
        part="field"
        ref={(form) => {
          this.#form = form;
        }}
        onSubmit={(event) => {
          event.preventDefault();
          void this.#send();
        }}
        onKeyDown={(event) => {
          if (event.key !== "Escape" || !reply) return;
          // One thing at a time: what else Escape would close stays open.
          event.preventDefault();
          this.#decide(null);
        }}
      >
        {reply === "away" && <p role="alert">{texts("composer.away")}</p>}
        {reply && reply !== "away" && words && Heard && (
          <Heard {...props} sent={sent} reply={reply} words={words} about={about} decide={this.#decide} />
        )}
        <div class="say">
          <ReadAloud turn={turn} texts={texts} />
          <input
            type="text"
            enterkeyhint="send"
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            autocorrect=""
            maxLength={most}
            value={typed}
            aria-label={texts("composer.label")}
            placeholder={texts("composer.label")}
            onInput={({ currentTarget: { value } }) => this.#type(value.slice(0, most))}
            onFocus={this.#prepare}
          />
          <button
            type="submit"
            aria-disabled={isReading || !typed.trim()}
            aria-label={texts("composer.send")}
          >
            <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true">
              <path fill="currentColor" d="M12 3l8 9h-5v9H9v-9H4z" />
            </svg>
          </button>
        </div>
      </form>
    );
  }
}
