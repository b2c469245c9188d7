import { journalOf } from "./journal.ts";
import { type Journal, journalShape } from "./journal-shape.ts";
import type { LogEvent } from "./log.ts";
import { parseOldLog } from "./old-log.ts";
import { eventShape } from "./shapes.ts";

/*
 * The door at which journals and events come in from outside. All else in a session takes what was checked here, and
 * needs none of the code that checks it.
 */

/** One event as a line of `npm run play` or a host page might send it; null for anything else. */
export function parseEvent(value: unknown): LogEvent | null {
  const parsed = eventShape.safeParse(value);
  return parsed.success ? parsed.data : null;
}

/**
 * A journal from storage, a link or a file, also as earlier versions kept it; null for anything that is none, or is
 * beyond all bounds. Never throws.
 */
export function parseJournal(value: unknown): Journal | null {
  const parsed = journalShape.safeParse(value);
  if (parsed.success) return parsed.data;
  const log = parseOldLog(value);
  return log && journalOf(log);
}
