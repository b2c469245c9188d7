import { Component } from "preact";
import type { Line, Texts } from "../../turn/index.ts";
import type { Screens } from "./screens.ts";

/** More lines than this push the turn off a phone's screen: then only the last two stay in sight. */
const LINES_IN_SIGHT = 3;

type Props = {
  lines: Line[];
  change(index: number): void;
  texts: Texts;
  /** Asks before later answers are touched; it comes with the engine. */
  changing: Screens["changing"] | undefined;
};

/** Earlier turns, folded to a line each. */
export class Lines extends Component<Props, { open: boolean }> {
  override render({ lines, ...props }: Props) {
    const { open } = this.state;
    const folded = lines.length > LINES_IN_SIGHT ? lines.length - 2 : 0;
    const shown = open ? lines : lines.slice(folded);
    return (
      <>
        {folded > 0 && (
          <button
            type="button"
            class="quiet fold"
            aria-expanded={Boolean(open)}
            onClick={() => this.setState({ open: !open })}
          >
            {props.texts("ui.earlier", { count: folded })}
          </button>
        )}
        {shown.length > 0 && (
          // biome-ignore lint/a11y/noRedundantRoles: Safari drops the list from its speech once the markers are gone.
          <ol role="list" class="lines" start={lines.length - shown.length + 1}>
            {shown.map((line) => (
              <EarlierTurn key={`${line.index} ${line.turn}`} line={line} {...props} />
            ))}
          </ol>
        )}
      </>
    );
  }
}

type TurnProps = { line: Line } & Omit<Props, "lines">;

class EarlierTurn extends Component<TurnProps, { asking: boolean }> {
  #opener: HTMLElement | null = null;

  readonly #close = () => {
    this.setState({ asking: false });
    this.#opener?.focus();
  };

  /** What was answered seldom changes. */
  override shouldComponentUpdate({ line, texts }: TurnProps, { asking }: { asking?: boolean }): boolean {
    const { props, state } = this;
    return Boolean(
      asking || state.asking || texts !== props.texts || JSON.stringify(line) !== JSON.stringify(props.line),
    );
  }

  override render({ line, texts, changing: Changing }: TurnProps) {
    // Not the `change` of when it was drawn: that one belongs to an earlier view.
    const act = () => this.props.change(line.index);
    return (
      <li>
        <p>
          <span>{line.title}</span> <b>{line.answer}</b>
        </p>
        {line.canChange && (
          <button
            type="button"
            class="quiet"
            aria-label={`${texts("ui.change")}: ${line.title}`}
            onClick={(event) => {
              this.#opener = event.currentTarget;
              if (line.drops) this.setState({ asking: true });
              else act();
            }}
          >
            {texts("ui.change")}
          </button>
        )}
        {Changing && this.state.asking && line.canChange && (
          <Changing line={line} texts={texts} act={act} close={this.#close} />
        )}
      </li>
    );
  }
}
