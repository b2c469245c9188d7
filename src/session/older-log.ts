import type { LogEvent } from "./log.ts";
import { metaOf, record, type Session } from "./session.ts";

/**
 * Passes what a log was not asked yet when it was written: a gate or a question before one, as the log's next event shows
 * that it was gone on. For a replay alone: nothing is confirmed by it. A gate that stood there before under another name
 * opens only for every line of today's.
 * @returns the session at the turn of the event, or after an answer at the gate that stood there before; null where the
 * event is no such one
 */
export function passOlder(session: Session, event: LogEvent): Session | null {
  const { turn, gate, answers = [] } = metaOf(session);
  if (!("turn" in event) || checkOf(event.turn) !== checkOf(turn)) return null;
  if (event.turn === turn) return null;
  const every = [...(session.flow.gates[gate ?? ""]?.items ?? [])];
  const answer = (id: string, items = every) => {
    const given = { type: "answered", turn, answer: id, items, at: event.at, by: "log" } as const;
    const { session: next, refusal } = record(session, given);
    return refusal ? null : { ...next, log: session.log };
  };
  if (gate && event.type === "answered" && event.turn.includes(".gate-")) {
    const next = answer(event.answer, event.items ?? []);
    return next && { ...next, log: { ...session.log, events: [...session.log.events, event] } };
  }
  const ways = (gate ? ["ready"] : answers).map((id) => answer(id));
  return ways.find((next) => next && metaOf(next).turn === event.turn) ?? null;
}

const checkOf = (turn: string) => turn.split(".")[0] ?? "";
