import * as z from "zod/mini";
import { bounds } from "./bounds.ts";
import type { Log } from "./log.ts";
import { at, eventShape } from "./shapes.ts";

/** What earlier versions kept in place of a journal. The version of flows/ in it was read by nobody. */
export const oldLogShape = z.object({
  format: z.literal(1),
  model: z.nullable(z.string().check(z.maxLength(bounds.code))),
  started: at,
  /** How the tap was left by what was no longer in the log. */
  water: z.optional(z.enum(["closed-by-us", "left-closed"])),
  events: z.array(eventShape).check(z.maxLength(bounds.events)),
});

/** A log as earlier versions kept it, with all that it says; null for anything that is none. Never throws. */
export function parseOldLog(value: unknown): Log | null {
  const parsed = oldLogShape.safeParse(value);
  if (!parsed.success) return null;
  const { model, started, water, events } = parsed.data;
  const left = water ? [{ type: "water-left" as const, water, at: started }] : [];
  return { model, started, events: [...left, ...events] };
}
