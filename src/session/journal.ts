import { bounds } from "./bounds.ts";
import type { Entry, Journal, Told } from "./journal-shape.ts";
import { createLog, type Log, type LogEvent } from "./log.ts";

/** An answer that was taken back because an earlier one was changed and may still fit, or that was told unasked. */
export type Held = { id: string; event: Extract<LogEvent, { turn: string }> };

/** The question for the model code. */
const modelTurn = "part.model";

/** A journal and what of it is in force: `ids` has the entry of each event of `log`. */
export type Standing = { journal: Journal; log: Log; ids: string[]; held: Held[] };

/** A journal before its first entry. `started` is RFC 3339; `model` as for a log. */
export function createJournal(started: string, model: string | null = null): Journal {
  const log = createLog(started, model);
  return { format: 2, model: log.model, started, entries: [] };
}

/** A journal that has this log in force. Equal logs give equal ids, so that two tabs make the same of a kept one. */
export function journalOf(log: Log): Journal {
  const entryOf = (journal: Journal, { at, ...event }: LogEvent, place: number) =>
    append(journal, { id: `log-${place + 1}`, at, event });
  return log.events.reduce(entryOf, createJournal(log.started, log.model));
}

/** The journal with one more entry. `id` is one that no entry has. */
export function append(journal: Journal, entry: Omit<Entry, "seq" | "by">): Journal {
  const seq = (journal.entries.at(-1)?.seq ?? 0) + 1;
  return { ...journal, entries: [...journal.entries, { ...entry, seq, by: "householder" }] };
}

/** What of a journal is in force: neither taken back nor from before the latest new start. */
export function standingOf(journal: Journal): Standing {
  const { model } = journal;
  let { started } = journal;
  let inForce: { id: string; event: LogEvent }[] = [];
  let held: Held[] = [];
  for (const { id, at, written, event } of journal.entries) {
    if (event.type === "started-again") {
      started = at;
      inForce = [];
      held = [];
    } else if (event.type === "took-back") {
      const [gone, kept] = [new Set(event.entries), new Set(event.held)];
      const back = inForce.filter((one) => gone.has(one.id));
      held = [...held, ...back.filter((one): one is Held => kept.has(one.id) && "turn" in one.event)];
      inForce = inForce.filter((one) => !gone.has(one.id));
    } else if (event.type === "times-corrected") {
      const [first = started, ...times] = event.times;
      started = first;
      inForce = inForce.map(({ id, event }, place) => ({
        id,
        event: { ...event, at: times[place] ?? event.at },
      }));
    } else if (event.type === "told") {
      const words = {
        ...(event.words && { words: event.words }),
        ...(event.heard && { heard: event.heard }),
      };
      const said: Held[] = event.facts.map((fact) => ({
        id,
        event: { type: "answered", ...fact, ...words, at },
      }));
      if (event.model)
        said.push({
          id,
          event: { type: "model-given", turn: modelTurn, code: event.model, typed: event.model, at },
        });
      held = [...held.filter((one) => !said.some(({ event }) => event.turn === one.event.turn)), ...said];
    } else if (!(written && event.type === "wait-ended")) {
      inForce.push({ id, event: { ...event, at } });
      if ("turn" in event) held = held.filter((one) => one.event.turn !== event.turn);
    }
  }
  const events = inForce.map(({ event }) => event);
  return { journal, log: { model, started, events }, ids: inForce.map((one) => one.id), held };
}

/**
 * Writes down how a session went on: what is no longer in its log is taken back, what has other times is corrected,
 * what is new is appended. The log that comes out is the session's.
 * @param at RFC 3339
 * @param newId an id that no entry has
 * @param held places in the log before of what may be put back where its turn comes up again
 */
export function advance(
  before: Standing,
  log: Log,
  at: string,
  newId: () => string,
  held: number[] = [],
): Standing {
  const was = before.log.events;
  const isOther = (event: LogEvent, place: number) => !isSame(event, log.events[place]);
  const same = was.some(isOther) ? was.findIndex(isOther) : was.length;
  let { journal } = before;
  const write = (event: Entry["event"], when = at) => {
    journal = append(journal, { id: newId(), at: when, event });
  };
  const idAt = (place: number) => before.ids[place] ?? "";
  if (same < was.length) write({ type: "took-back", entries: before.ids.slice(same), held: held.map(idAt) });
  const times = [log.started, ...log.events.slice(0, same).map((event) => event.at)];
  if ([before.log.started, ...was].some((one, place) => place <= same && timeOf(one) !== times[place]))
    write({ type: "times-corrected", times });
  for (const { at: when, ...event } of log.events.slice(same)) write(event, when);
  const standing = { ...standingOf(journal), log };
  return journal.entries.length > bounds.entriesBeforeCompaction ? compact(standing) : standing;
}

/**
 * Writes down what was said unasked. Nothing of it is in force before its turn comes up (`putBack`), and what its turn
 * does not take, or lies behind a gate, never is.
 * @param at RFC 3339
 * @param id an id that no entry has
 */
export function tell(
  before: Standing,
  { words, facts, model, heard }: Told,
  at: string,
  id: string,
): Standing {
  const event: Entry["event"] = {
    type: "told",
    words: words.slice(0, bounds.ownWords),
    facts: facts.slice(0, bounds.facts),
    ...(model && { model }),
    ...(heard && { heard }),
  };
  return { ...standingOf(append(before.journal, { id, at, event })), log: before.log };
}

/** The same log from a journal of nothing but what is in force: its entries as they were written, times corrected. */
export function compact({ journal, log, ids }: Standing): Standing {
  const written = new Map(journal.entries.map((entry) => [entry.id, entry]));
  const entries = log.events.flatMap(({ at }, place) => {
    const entry = written.get(ids[place] ?? "");
    return entry ? [{ ...entry, at }] : [];
  });
  return { journal: { ...journal, started: log.started, entries }, log, ids, held: [] };
}

const timeOf = (one: string | LogEvent) => (typeof one === "string" ? one : one.at);

function isSame(one: LogEvent, other: LogEvent | undefined): boolean {
  if (one === other || !other) return one === other;
  const what = ({ at: _, ...rest }: LogEvent) => JSON.stringify(rest);
  return what(one) === what(other);
}
