import * as z from "zod/mini";
import { insightBounds as bounds } from "./bounds.ts";

const id = z.string().check(z.maxLength(bounds.id, { abort: true }), z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/));
const turn = z
  .string()
  .check(z.maxLength(bounds.turn, { abort: true }), z.regex(/^[a-z0-9-]+(\.[a-z0-9-]+)*$/));
const scenario = z.nullable(id);
const count = (most: number) => z.number().check(z.int(), z.minimum(0), z.maximum(most));
const format = z.literal(1);
/** A check and what it showed, both by their ids in flows/: never a reading, never words. */
const shown = z
  .string()
  .check(
    z.maxLength(bounds.outcome, { abort: true }),
    z.regex(/^[a-z0-9]+(-[a-z0-9]+)*\.[a-z0-9]+(-[a-z0-9]+)*$/),
  );
/** How long somebody was at it, without waits and breaks, and how many answers they gave. */
const spent = { minutes: count(bounds.minutes), answers: count(bounds.answers) };

const ended = {
  what: z.literal("ended"),
  scenario,
  outcome: z.enum(["fixed", "later", "part", "professional", "stopped"]),
  cause: z.nullable(id),
  part: z.nullable(id),
  ...spent,
};

/**
 * One thing that happened in somebody's search: a line of newline JSON. None says who or when, none has an id that
 * ties it to another, and none has what was typed, but for a model code that the shop's list has not. An
 * ending of format 2 has `seen`: what each check came to, in the order in which they were last answered, and `vain`: the
 * causes that were put right without that changing anything. One of format 1, which panels wrote before, has neither.
 */
export const insightLine = z.discriminatedUnion("what", [
  z.object({ format, what: z.literal("started") }),
  z.discriminatedUnion("format", [
    z.object({ format, ...ended }),
    z.object({
      format: z.literal(2),
      ...ended,
      seen: z.array(shown).check(z.maxLength(bounds.seen)),
      vain: z.array(id).check(z.maxLength(bounds.vain)),
    }),
  ]),
  z.object({
    format,
    what: z.literal("left"),
    scenario,
    turn,
    kind: z.enum(["choice", "gate", "reading", "model", "wait", "ending"]),
    ...spent,
  }),
  z.object({
    format,
    what: z.literal("lasted"),
    scenario,
    outcome: z.enum(["fixed", "part", "professional"]),
    // Panels did not write it before.
    cause: z.optional(z.nullable(id)),
    works: z.boolean(),
    days: count(bounds.days),
  }),
  z.object({ format, what: z.literal("returned"), scenario, turn }),
  z.object({ format, what: z.literal("not-understood"), scenario, turn }),
  z.object({
    format,
    what: z.literal("model-missing"),
    scenario,
    code: z.string().check(z.maxLength(bounds.code, { abort: true }), z.regex(/^[\p{L}\p{N}]+$/u)),
  }),
]);

export type InsightLine = z.infer<typeof insightLine>;

/** A line of a file as what it says; null for one that no panel has written. */
export function readLine(text: string): InsightLine | null {
  if (text.length > bounds.line) return null;
  try {
    return insightLine.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
