/* The shapes of what comes in from outside; whoever needs their types alone imports those, and no zod comes along. */
import * as z from "zod/mini";
import { prepared } from "../guide/index.ts";
import { readingShape } from "../instruments/readings.ts";
import { bounds } from "./bounds.ts";

const text = (most: number) => z.string().check(z.maxLength(most));
/** An instant of RFC 3339 with an offset. */
export const at = z.string().check(
  z.maxLength(bounds.time, { abort: true }),
  z.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/),
  // A 99th hour has the right shape, and a wait that begins then could not be counted.
  z.refine((text) => !Number.isNaN(Date.parse(text))),
);
const turn = text(bounds.turn);
/** What a person typed, where that was taken as this answer and they confirmed it. */
const words = z.optional(text(bounds.ownWords));

const answered = {
  type: z.literal("answered"),
  turn,
  words,
  answer: text(bounds.id),
  items: z.optional(z.array(text(bounds.id)).check(z.maxLength(bounds.items))),
};
const measured = { type: z.literal("measured"), turn, words, reading: readingShape };
const modelGiven = {
  type: z.literal("model-given"),
  turn,
  code: z.nullable(text(bounds.code)),
  typed: text(bounds.typed + 1),
};
const danger = { type: z.literal("danger-reported"), danger: text(bounds.id) };
const other = {
  type: z.enum(["help-asked", "ice-returned", "trouble-returned", "session-resumed", "wait-ended"]),
};
/** The entry whose answer this one repeats: an earlier answer was changed, and this one still fitted. */
const kept = z.optional(text(bounds.entryId));
/** An agent has heard it on the phone, and the householder has confirmed that they said so. */
export const heard = z.optional(z.literal(true));
/** What was left to be put back by what is no longer in force; it holds from the first turn on. */
const preparedLeft = { type: z.literal("prepared-left"), left: prepared };
/** The same of the tap alone, as it was kept before anything else was remembered. */
const waterLeft = { type: z.literal("water-left"), water: z.enum(["closed-by-us", "left-closed"]) };

/** The shape of one event as a person or a host page may send it. */
export const eventShape = z.discriminatedUnion("type", [
  z.object({ ...answered, at }),
  z.object({ ...measured, at }),
  z.object({ ...modelGiven, at }),
  z.object({ ...danger, at }),
  z.object({ ...other, at }),
]);

/** What an entry of a journal may say of a session. Its instant is the entry's own. */
export const actShapes = [
  z.object({ ...answered, kept, heard }),
  z.object({ ...measured, kept }),
  z.object({ ...modelGiven, kept }),
  z.object(danger),
  z.object(other),
  z.object(preparedLeft),
  z.object(waterLeft),
] as const;

/** What an entry says, without its instant. */
export type Act = z.infer<(typeof actShapes)[number]>;
