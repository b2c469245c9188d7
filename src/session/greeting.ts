import type { Guide } from "./guide.ts";
import { metaOf, record, type Session, startSession } from "./session.ts";

/** By guide: the session at the turn that greets, and the first turn of the chart. */
const known = new WeakMap<Guide, { greeting: Session | null; start: string }>();

/**
 * The turn that greets is shown before anything was answered, and asks for the complaint; the chart asks about danger
 * first all the same, and takes the complaint where its turn comes up (see `tell`).
 * @returns a session that waits at that turn, for one in which nothing was answered yet; null for any other, and in
 * flows where none greets
 */
export function greetingOf(session: Session): Session | null {
  const { guide, log } = session;
  if (log.events.some((event) => "turn" in event)) return null;
  const { greeting, start } = known.get(guide) ?? lookFor(guide);
  return metaOf(session).turn === start ? greeting : null;
}

function lookFor(guide: Guide): { greeting: Session | null; start: string } {
  const first = startSession(guide, "2026-01-01T00:00:00Z");
  const of = { greeting: sessionAt(guide.flow.greets, first), start: metaOf(first).turn };
  known.set(guide, of);
  return of;
}

function sessionAt(wanted: string | undefined, first: Session): Session | null {
  const found = new Map(wanted ? [[metaOf(first).turn, first]] : []);
  // The map grows while it is walked.
  for (const session of found.values()) {
    const { turn, answers = [] } = metaOf(session);
    if (turn === wanted) return session;
    for (const answer of answers) {
      const next = record(session, { type: "answered", turn, answer, at: first.log.started }).session;
      if (!found.has(metaOf(next).turn)) found.set(metaOf(next).turn, next);
    }
  }
  return null;
}
