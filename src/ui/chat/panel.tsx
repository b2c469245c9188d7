import type { Actions, Services, Texts, Turn, View } from "../../session/index.ts";
import { IcePath } from "../pictures/index.ts";
import { Answers } from "./answers.tsx";
import { Footer } from "./footer.tsx";
import { Hazards } from "./hazards.tsx";
import { Lines } from "./lines.tsx";
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
  const tap = useOneTap(view, actions);
  const { turn } = view;
  const Screen = turn && turn.kind !== "choice" ? screens?.[turn.kind] : null;
  const Picture = screens?.picture;
  const Badge = screens?.badge;
  return (
    <section
      class="panel"
      lang={texts("ui.locale")}
      dir={texts("ui.direction") as "ltr"}
      aria-label={texts("ui.title")}
    >
      <header>
        <div class="path">
          {turn && turn.path.length > 0 && <IcePath path={turn.path} label={texts("ui.path")} />}
        </div>
        <Lines lines={view.lines} change={tap.actions.change} texts={texts} />
      </header>
      <div class="turn" aria-busy={tap.busy || !turn || Screen === undefined}>
        {view.notices.map((notice) => (
          <p key={notice.id} class="note">
            {notice.text}
          </p>
        ))}
        {turn && (
          <div key={tap.place} class={turn.kind}>
            {turn.ending && Badge && <Badge outcome={turn.ending.outcome} texts={texts} />}
            <h2 ref={tap.heading} tabIndex={-1}>
              {turn.heading}
            </h2>
            <Effort turn={turn} texts={texts} />
            <Hazards hazards={turn.hazards} brief={turn.gated} texts={texts} />
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
              answers={turn.answers}
              busy={tap.busy}
              give={(id) => tap.actions.answer(turn.turn, id)}
            />
          </div>
        )}
        {!turn && <Loading texts={texts} />}
      </div>
      <Footer view={view} actions={tap.actions} texts={texts} />
    </section>
  );
}

/** Minutes and tools, said before anybody kneels down at a freezer. */
function Effort({ turn, texts }: { turn: Turn; texts: Texts }) {
  const tools = new Intl.ListFormat(texts("ui.locale")).format(turn.tools);
  const said = [
    turn.minutes > 0 && texts("ui.minutes", { count: turn.minutes }),
    tools && texts("ui.tools", { tools }),
  ].filter(Boolean);
  return said.length > 0 && <p class="small">{said.join(" · ")}</p>;
}

function Loading({ texts }: { texts: Texts }) {
  return <p class="loading">{texts("ui.loading")}</p>;
}
