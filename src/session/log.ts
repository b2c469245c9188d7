import type { Prepared } from "../guide/index.ts";
import { bounds } from "./bounds.ts";
import type { Act } from "./shapes.ts";

/** One thing that happened, with the instant and the person's own UTC offset (RFC 3339); `by` where it was another hand. */
export type LogEvent = Act & { at: string; by?: string };

/** The events of one session that are in force: what a session is replayed from. */
export type Log = { model: string | null; started: string; events: LogEvent[] };

/** What was typed for an answer, as an event holds it; nothing where it was tapped. */
export const inWords = (words: string | undefined): { words?: string } =>
  words ? { words: words.slice(0, bounds.ownWords) } : {};

/** An empty log. `model` is a model code that the shop's page already knows; one that no shop could have is none. */
export function createLog(started: string, model: string | null = null): Log {
  const isCode = model !== null && model.length <= bounds.code;
  return { model: isCode ? model : null, started, events: [] };
}

/** What was changed in the home and left so by what is no longer in force; null where that left it as it was found. */
export function leftIn({ events }: Log): Prepared | null {
  return events.flatMap((event) => leftBy(event) ?? []).at(-1) ?? null;
}

/** What an event says was left to be put back; null for one that says nothing of it. */
export function leftBy(event: LogEvent): Prepared | null {
  if (event.type === "prepared-left") return event.left;
  if (event.type !== "water-left") return null;
  return { water: event.water === "left-closed" ? "left-closed" : "closed" };
}

/** The log with what is left to be put back by what is no longer in it, so that leaving it out opens no tap. */
export function leavePrepared(log: Log, left: Prepared | null, at: string): Log {
  return left ? { ...log, events: [...log.events, { type: "prepared-left", left, at }] } : log;
}
