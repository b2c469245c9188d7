import { append, createJournal, type Standing } from "./journal.ts";
import type { Entry, Journal } from "./journal-shape.ts";

/**
 * The same conversation, as short as it can be carried to another device: what is in force, and what was said unasked
 * since the latest start, in the order it was written. What was taken back stays behind, answers included that might
 * still have fitted. Equal conversations give equal journals.
 */
export function carriedOf({ journal, log, ids }: Standing): Journal {
  const times = new Map(ids.map((id, place) => [id, log.events[place]?.at ?? log.started]));
  const since = journal.entries.findLastIndex(({ event }) => event.type === "started-again") + 1;
  const inForce = journal.entries
    .slice(since)
    .filter(({ id, event }) => times.has(id) || event.type === "told");
  return inForce.reduce(
    (carried, { id, at, event }, place) =>
      append(carried, { id: `${place}`, at: times.get(id) ?? at, event: unnamed(event) }),
    createJournal(log.started, log.model),
  );
}

/** An entry names another by its id, which it no longer has. */
function unnamed(event: Entry["event"]): Entry["event"] {
  if (!("kept" in event)) return event;
  const { kept: _, ...rest } = event;
  return rest;
}
