import { useState } from "preact/hooks";
import type { Actions, Services, Texts, View } from "../../session/index.ts";
import { IcePath } from "../pictures/index.ts";
import { Answers } from "./answers.tsx";
import { createTapGuard } from "./double-tap.ts";
import { Footer } from "./footer.tsx";
import { useOneTap } from "./one-tap.ts";
import type { Screens } from "./screens.ts";

export type PanelProps = {
  view: View;
  actions: Actions;
  services: Services;
  texts: Texts;
  /** Null until the engine has arrived; a `choice` needs none of it. */
  screens: Screens | null;
};

/** The whole panel: where we are on the ice path, what was answered, one turn, and the ways out. */
export function Panel({ view, actions, services, texts, screens }: PanelProps) {
  const [guard] = useState(createTapGuard);
  const tap = useOneTap(view, actions);
  const { turn } = view;
  const Screen = turn && turn.kind !== "choice" ? screens?.[turn.kind] : null;
  const {
    lines: Lines,
    before: Before,
    ownWords: OwnWords,
    badge: Badge,
    picture: Picture,
  }: Partial<Screens> = screens ?? {};
  return (
    <section
      {...guard}
      class="panel"
      lang={texts("ui.locale")}
      dir={texts("ui.direction") as "ltr"}
      aria-label={texts("ui.title")}
    >
      <header>
        <div class="path">
          {turn && turn.path.length > 0 && <IcePath path={turn.path} label={turn.pathText} />}
        </div>
        {Lines && <Lines lines={view.lines} change={tap.actions.change} texts={texts} />}
      </header>
      <div class="turn" aria-busy={tap.busy || !turn || Screen === undefined}>
        {view.notices.map((notice) => (
          <div key={notice.id} class="note">
            <p>{notice.text}</p>
            {notice.goOn && (
              <button type="button" onClick={() => tap.actions.goOn()}>
                {notice.goOn}
              </button>
            )}
          </div>
        ))}
        {turn && (
          <div key={tap.place} class={turn.kind}>
            {turn.ending && Badge && <Badge outcome={turn.ending.outcome} texts={texts} />}
            <h2 ref={tap.heading} tabIndex={-1}>
              {turn.heading}
            </h2>
            {Before && <Before turn={turn} texts={texts} />}
            {turn.body.map((text) => (
              <p key={text}>{text}</p>
            ))}
            {turn.picture && Picture && <Picture id={turn.picture} />}
            {turn.why && (
              <details>
                <summary>{texts("ui.why")}</summary>
                <p>{turn.why}</p>
              </details>
            )}
            {Screen && Picture && (
              <Screen
                turn={turn}
                actions={tap.actions}
                services={services}
                texts={texts}
                busy={tap.busy}
                picture={Picture}
              />
            )}
            {Screen === undefined && <Loading texts={texts} />}
            <Answers
              // A gate's own screen confirms it, once its lines are ticked.
              answers={turn.answers.filter(({ role }) => turn.kind !== "gate" || role !== "own")}
              busy={tap.busy}
              give={(id) => tap.actions.answer(turn.turn, id)}
            />
            {OwnWords && <OwnWords turn={turn} actions={tap.actions} texts={texts} busy={tap.busy} />}
          </div>
        )}
        {!turn && <Loading texts={texts} />}
      </div>
      <Footer view={view} actions={tap.actions} texts={texts} wayOut={screens?.wayOut} />
    </section>
  );
}

function Loading({ texts }: { texts: Texts }) {
  return <p class="loading">{texts("ui.loading")}</p>;
}
