import type { FlowSlice } from "../chart/index.ts";
import { append, type Held, type Standing, standingOf } from "./journal.ts";
import { type LogEvent, leavePrepared } from "./log.ts";
import { replay } from "./replay.ts";
import { isStopped, leftOf, metaOf, record, type Session } from "./session.ts";

/** What a change of an answer came to. */
export type Changed = {
  session: Session;
  /** Places in the log before of later answers that are put back where their turn comes up again. */
  held: number[];
  /** Later answers that are asked again whatever is answered now: behind a gate, about the tap, of a wait. */
  gone: LogEvent[];
};

/**
 * Goes back to the turn that event `index` of the log answered. That answer and all later ones are taken back; a
 * hazardous turn is met behind its gate. A session that is stopped stays as it is.
 * @param at RFC 3339
 */
export function changeAnswer(session: Session, index: number, at: string): Changed {
  if (isStopped(session)) return { session, held: [], gone: [] };
  const { guide, flow, log } = session;
  const before = { ...log, events: log.events.slice(0, index) };
  const left = leftOf(session);
  const { dropped } = replay(guide, leavePrepared(before, left, at));
  // What no longer fits, as much is still to be put back, is left out: what was left comes last, and is not lost with it.
  const fits = { ...before, events: before.events.slice(0, before.events.length - Math.max(dropped - 1, 0)) };
  const back = replay(guide, leavePrepared(fits, left, at)).session;
  const later = log.events.flatMap((event, place) => ("turn" in event && place > index ? [place] : []));
  const [held, gone] = [true, false].map((may) =>
    later.filter((place) => mayBeHeld(flow, log.events[place] as LogEvent) === may),
  ) as [number[], number[]];
  return {
    session: record(back, { type: "session-resumed", at }).session,
    held,
    gone: gone.map((place) => log.events[place] as LogEvent),
  };
}

/**
 * Answers for the person what they had answered before they changed an earlier answer, or had told unasked, as long as
 * such a turn comes up. It passes no gate, and comes to no end that a person has to see themselves.
 * @param at RFC 3339
 */
export function putBack(session: Session, held: Held[], at: string): Session {
  const { turn, gate } = metaOf(session);
  if (gate) return session;
  const again = held.filter(({ event }) => event.turn === turn).at(-1);
  if (!again || !mayBeHeld(session.flow, again.event)) return session;
  const { at: _, ...event } = again.event;
  const next = record(session, { ...event, kept: again.id, at } as LogEvent);
  const { outcome } = metaOf(next.session);
  if (next.refusal || outcome === "stopped" || outcome === "fixed") return session;
  return putBack(
    next.session,
    held.filter(({ event }) => event.turn !== turn),
    at,
  );
}

/**
 * Starts again in the same journal: nothing before it is in force any more, but a tap that is closed stays so.
 * @param at RFC 3339
 * @param id an id that no entry has
 * @returns the session before its first answer, which may be ahead of the standing by how the tap was left
 */
export function startAgain(
  before: Standing,
  session: Session,
  at: string,
  id: string,
): { standing: Standing; session: Session } {
  const standing = standingOf(append(before.journal, { id, at, event: { type: "started-again" } }));
  const log = leavePrepared(standing.log, leftOf(session), at);
  return { standing, session: replay(session.guide, log).session };
}

/** False for whatever has to be asked again: what lies behind a gate, the tap, a wait and what came of it, a danger. */
function mayBeHeld({ lasting, dangers }: FlowSlice, event: LogEvent): boolean {
  if (event.type === "model-given") return event.code !== null;
  if (!("turn" in event)) return false;
  if (!lasting.includes(event.turn) && !lasting.includes(event.turn.split(".")[0] ?? "")) return false;
  return event.type === "measured" || !dangers.includes(event.answer);
}
