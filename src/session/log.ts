import * as z from "zod/mini";
import { readingShape } from "../instruments/readings.ts";
import { bounds } from "./bounds.ts";

const text = (most: number) => z.string().check(z.maxLength(most));
const at = z.string().check(
  z.maxLength(bounds.time, { abort: true }),
  z.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/),
  // A 99th hour has the right shape, and a wait that begins then could not be counted.
  z.refine((text) => !Number.isNaN(Date.parse(text))),
);
const turn = text(bounds.turn);
/** The shape of one event. */
export const eventShape = z.discriminatedUnion("type", [
  z.object({
    type: z.literal("answered"),
    turn,
    answer: text(bounds.id),
    items: z.optional(z.array(text(bounds.id)).check(z.maxLength(bounds.items))),
    at,
  }),
  z.object({ type: z.literal("measured"), turn, reading: readingShape, at }),
  z.object({
    type: z.literal("model-given"),
    turn,
    code: z.nullable(text(bounds.code)),
    typed: text(bounds.typed + 1),
    at,
  }),
  z.object({ type: z.literal("danger-reported"), danger: text(bounds.id), at }),
  z.object({ type: z.enum(["help-asked", "ice-returned", "session-resumed", "wait-ended"]), at }),
]);

/** The shape of a log. */
export const logShape = z.object({
  format: z.literal(1),
  flow: text(bounds.version),
  model: z.nullable(text(bounds.code)),
  started: at,
  /** How the tap was left by what is no longer in the log; as it was found where this is not there. */
  water: z.optional(z.enum(["closed-by-us", "left-closed"])),
  events: z.array(eventShape).check(z.maxLength(bounds.events)),
});

/** One thing that happened, with the instant and the person's own UTC offset (RFC 3339). */
export type LogEvent = z.infer<typeof eventShape>;

/** The events of one session: the only thing that is stored or shared. `flow` is the version of flows/ it ran on. */
export type Log = z.infer<typeof logShape>;

/** An empty log. `model` is a model code that the shop's page already knows; one that no shop could have is none. */
export function createLog(flow: string, started: string, model: string | null = null): Log {
  const isCode = model !== null && model.length <= bounds.code;
  return { format: 1, flow, model: isCode ? model : null, started, events: [] };
}

/** A log from storage, a link or a file; null for anything that is none, or is beyond all bounds. Never throws. */
export function parseLog(value: unknown): Log | null {
  const parsed = logShape.safeParse(value);
  return parsed.success ? parsed.data : null;
}

/** One event as a line of `npm run play` or a host page might send it; null for anything else. */
export function parseEvent(value: unknown): LogEvent | null {
  const parsed = eventShape.safeParse(value);
  return parsed.success ? parsed.data : null;
}
