import { Component } from "preact";
import type { Line, Texts } from "../../turn/index.ts";
import type { Screens } from "./screens.ts";

/** More lines than this push the question off a phone's screen: then only the last one stays in sight. */
const LINES_IN_SIGHT = 2;

/** So many letters of own words fit where they are cut, on the narrowest phone. */
const SHOWN = 32;

type Props = {
  lines: Line[];
  change(index: number): void;
  texts: Texts;
  /** Asks before later answers are touched; it comes with the engine. */
  changing: Screens["changing"] | undefined;
};

/** What was said so far: a row for each exchange, the older ones folded. */
export class Lines extends Component<Props, { open: boolean }> {
  override render({ lines, ...props }: Props) {
    const { open } = this.state;
    const folded = lines.length > LINES_IN_SIGHT ? lines.length - 1 : 0;
    const shown = open ? lines : lines.slice(folded);
    return (
      <>
        {folded > 0 && (
          <button
            type="button"
            class="past fold"
            aria-expanded={Boolean(open)}
            onClick={() => this.setState({ open: !open })}
          >
            {props.texts("ui.earlier", { count: folded })}
          </button>
        )}
        {shown.length > 0 && (
          // biome-ignore lint/a11y/noRedundantRoles: Safari drops the list from its speech once the markers are gone.
          <ol role="list" start={lines.length - shown.length + 1}>
            {shown.map((line, place) => (
              // By its place in the thread: in the log it is another before the engine has come.
              <Exchange key={`${lines.length - shown.length + place} ${line.turn}`} line={line} {...props} />
            ))}
          </ol>
        )}
      </>
    );
  }
}

type ExchangeProps = { line: Line } & Omit<Props, "lines">;

/** A short question and what was answered; a tap on the row changes the answer. */
class Exchange extends Component<ExchangeProps, { asking: boolean }> {
  #opener: HTMLElement | null = null;

  readonly #close = () => {
    this.setState({ asking: false });
    this.#opener?.focus();
  };

  /** What was answered seldom changes. */
  override shouldComponentUpdate({ line, texts }: ExchangeProps, { asking }: { asking?: boolean }): boolean {
    const { props, state } = this;
    return Boolean(
      asking || state.asking || texts !== props.texts || JSON.stringify(line) !== JSON.stringify(props.line),
    );
  }

  override render({ line, texts, changing: Changing }: ExchangeProps) {
    // Not the `change` of when it was drawn: that one belongs to an earlier view.
    const act = () => this.props.change(line.index);
    return (
      <li>
        <button
          type="button"
          class="past"
          title={texts("ui.change")}
          onClick={(event) => {
            this.#opener = event.currentTarget;
            if (line.drops || line.words?.[SHOWN]) this.setState({ asking: true });
            else act();
          }}
        >
          <span>{line.title}</span>{" "}
          <b>
            {line.words && <bdi>{line.words} </bdi>}
            {line.answer}
          </b>
        </button>
        {Changing && this.state.asking && (
          <Changing line={line} texts={texts} act={act} close={this.#close} />
        )}
      </li>
    );
  }
}
