import { bounds } from "./bounds.ts";
import type { Act } from "./shapes.ts";

/** One thing that happened, with the instant and the person's own UTC offset (RFC 3339). */
export type LogEvent = Act & { at: string };

/** The events of one session that are in force: what a session is replayed from. */
export type Log = { model: string | null; started: string; events: LogEvent[] };

/** An empty log. `model` is a model code that the shop's page already knows; one that no shop could have is none. */
export function createLog(started: string, model: string | null = null): Log {
  const isCode = model !== null && model.length <= bounds.code;
  return { model: isCode ? model : null, started, events: [] };
}

/** A tap that we had closed and that nothing in force opens: by us, or since the person could not open it again. */
export type WaterLeft = Extract<LogEvent, { type: "water-left" }>["water"];

/** How the tap was left by what is no longer in force; undefined where that left it as it was found. */
export function waterIn({ events }: Log): WaterLeft | undefined {
  return events.flatMap((event) => (event.type === "water-left" ? [event.water] : [])).at(-1);
}

/** The log with how the tap was left by what is no longer in it, so that leaving it out opens no tap. */
export function leaveWater(log: Log, water: WaterLeft | undefined, at: string): Log {
  return water ? { ...log, events: [...log.events, { type: "water-left", water, at }] } : log;
}
