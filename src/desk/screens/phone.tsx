import { choicesAt, pointedAt } from "../board/index.ts";
import { Mirror } from "./mirror.tsx";
import type { RoomProps } from "./props.ts";

/** Their screen as they see it, and what may and may not be done about it. */
export function Phone({ acts, texts, picture, clock }: RoomProps) {
  const { room } = acts;
  const { shared, me, followed, isUp, over, isFull } = room;
  const view = followed?.view ?? null;
  const pointed = pointedAt(shared, me, view?.turn ?? null);
  const isIn = shared.people.some(({ id, is }) => id === me && is === "in");
  const standing =
    over || shared.isEnded ? "over" : !isUp ? "down" : shared.isPaused ? "paused" : ("live" as const);
  const place = pointed ? choicesAt(view?.turn ?? null).indexOf(pointed) : -1;
  return (
    <section class="phone" aria-label={texts("desk.bar.phone-long")}>
      <div class="bar">
        <b>{texts("desk.bar.phone-long")}</b>
        <small class={standing}>{texts(`desk.bar.${standing}`)}</small>
      </div>
      {standing !== "live" && standing !== "over" && <p class="halt">{texts(`desk.state.${standing}`)}</p>}
      {isFull && <p class="halt">{texts("desk.state.full")}</p>}
      {room.hasFault && <p class="halt">{texts("desk.mirror.fault")}</p>}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what is scrolled can be scrolled by keys. */}
      <section class="mirror scroll" tabIndex={0} aria-label={texts("desk.mirror.label")}>
        {view ? (
          <Mirror view={view} texts={texts} picture={picture} pointed={place} now={clock} />
        ) : (
          <p class="none">{texts(isIn ? "desk.mirror.none" : "desk.mirror.asking")}</p>
        )}
      </section>
      {view && (
        <p class="facing">
          {pointed ? texts("desk.mirror.pointing", { answer: pointed.text }) : texts("desk.mirror.looking")}
        </p>
      )}
    </section>
  );
}
