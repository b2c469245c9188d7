import { Component } from "preact";
import type { Actions, Services, Texts, View } from "../../turn/index.ts";
import { Alert } from "./alert.tsx";
import { Answers } from "./answers.tsx";
import { createTapGuard } from "./double-tap.ts";
import { Lines } from "./lines.tsx";
import { Loading, type Trouble } from "./loading.tsx";
import { OneTap, placeOf } from "./one-tap.ts";
import type { Screens } from "./screens.ts";
import { Top } from "./top.tsx";

export type PanelProps = {
  /** What the page calls this panel; null where it is the only one. */
  label?: string | null | undefined;
  view: View;
  actions: Actions;
  services: Services;
  texts: Texts;
  /** Null until the engine has arrived; a `choice` needs none of it. */
  screens: Screens | null;
  /** An answer that was tapped before the engine was there, and waits for it. */
  taken?: string;
  /** Why the engine is not there yet. */
  trouble?: Trouble | null;
};

/** The whole panel: the ways out, what was said so far, one turn, and its answers within the thumb's reach. */
export class Panel extends Component<PanelProps> {
  readonly #guard = createTapGuard();
  readonly #tap = new OneTap(() => this.setState({}));
  /** Once a tap has led to another turn. */
  #isUsed = false;
  #fillings = 0;

  readonly #refill = () => {
    this.#fillings++;
    this.setState({});
  };

  override shouldComponentUpdate({ view }: PanelProps): boolean {
    if (placeOf(view) !== placeOf(this.props.view)) {
      this.#isUsed ||= this.#tap.hasLed;
      this.#tap.leave();
    }
    return true;
  }

  override componentDidUpdate({ view }: PanelProps): void {
    if (placeOf(view) !== placeOf(this.props.view)) this.#tap.arrive();
  }

  override componentWillUnmount(): void {
    this.#tap.end();
  }

  override render(given: PanelProps) {
    const { view, actions: all, services, texts, screens, taken = "", trouble, label } = given;
    const busy = this.#tap.isBusy(view);
    const actions = this.#tap.actionsOf(view, all);
    const { turn } = view;
    const Screen = turn && turn.kind !== "choice" ? screens?.[turn.kind] : null;
    // A stop is whole without the rest of the script, and nothing on it can be changed but by starting again.
    const isStop = turn?.ending?.outcome === "stopped";
    const {
      state: State,
      before: Before,
      after: After,
      notices: Notices,
      composer: Composer,
      badge: Badge,
      picture: Picture,
    }: Partial<Screens> = screens ?? {};
    // A gate's own screen confirms it, once its lines are ticked.
    const answers = turn?.answers.filter(({ id }) => turn.kind !== "gate" || id !== "ready") ?? [];
    const own = answers.filter(({ role }) => role === "own").length;
    // 'Not sure' and 'can't do this' share a row.
    const rows = own + Number(answers.length > own);
    const props = { actions, services, texts, busy };
    const notices = Notices && (
      <Notices notices={view.notices} means={turn?.means ?? ""} goOn={actions.goOn} />
    );
    return (
      <section
        {...this.#guard}
        part="panel"
        class={`panel ${this.#isUsed ? "used" : ""}`}
        lang={texts("ui.locale")}
        dir={texts("ui.direction") as "ltr"}
        aria-label={label || texts("ui.title")}
      >
        <Top key={isStop} {...props} view={view} more={screens?.more} />
        {State && turn && <State turn={turn} texts={texts} />}
        {!isStop && (
          <Lines lines={view.lines} change={actions.change} texts={texts} changing={screens?.changing} />
        )}
        {/* A new one once there is a turn: nothing moves that somebody looks at. */}
        <div
          key={turn ? "turn" : "none"}
          class="turn"
          aria-busy={busy || !turn || (Screen === undefined && !isStop)}
        >
          {!isStop && notices}
          {turn && (
            <div key={placeOf(view)} class={turn.kind} style={{ "--rows": rows }}>
              {turn.ending &&
                (Badge ? (
                  <Badge outcome={turn.ending.outcome} texts={texts} />
                ) : (
                  <p class="badge">
                    <Alert />
                  </p>
                ))}
              <h2 ref={this.#tap.heading} part="question" tabIndex={-1}>
                {turn.heading}
              </h2>
              {Before && Picture && <Before turn={turn} texts={texts} picture={Picture} />}
              {turn.body[1] && !turn.ending ? (
                <ol class="how">
                  {turn.body.map((text) => (
                    <li key={text}>{text}</li>
                  ))}
                </ol>
              ) : (
                turn.body.map((text) => <p key={text}>{text}</p>)
              )}
              {turn.note && <p class="small">{turn.note}</p>}
              {Screen && Picture && <Screen key={this.#fillings} {...props} turn={turn} picture={Picture} />}
              {turn.why && (
                <details>
                  <summary>{texts("ui.why")}</summary>
                  <p>{turn.why}</p>
                </details>
              )}
              {After && Picture && !isStop && <After turn={turn} texts={texts} picture={Picture} />}
              {!isStop && (Screen === undefined || (turn.kind === "choice" && trouble)) && (
                <Loading trouble={trouble} texts={texts} />
              )}
              {answers[0] && (
                <div class="dock">
                  <Answers
                    answers={answers}
                    busy={busy}
                    taken={taken}
                    isUrgent={(id) => view.dangers.some((danger) => danger.id === id)}
                    give={(id) => actions.answer(turn.turn, id)}
                  />
                </div>
              )}
            </div>
          )}
          {isStop && notices}
          {!turn && <Loading trouble={trouble} texts={texts} />}
        </div>
        {!isStop && (
          <div key={!Composer} class="foot">
            {turn && Composer && Picture && (
              <Composer
                {...props}
                picture={Picture}
                turn={turn}
                view={view}
                heard={screens?.heard}
                refill={this.#refill}
              />
            )}
          </div>
        )}
      </section>
    );
  }
}
