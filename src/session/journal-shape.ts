import * as z from "zod/mini";
import { bounds } from "./bounds.ts";
import { actShapes, at, heard } from "./shapes.ts";

const id = z.string().check(z.minLength(1), z.maxLength(bounds.entryId));
const ids = z.array(id).check(z.maxLength(bounds.entries));

/** These entries are no longer in force. Those that are `held` are put back where their turn comes up again. */
const tookBack = z.object({ type: z.literal("took-back"), entries: ids, held: ids });
/** Nothing before this is in force. */
const startedAgain = z.object({ type: z.literal("started-again") });
/** A clock had run ahead: the true times of the start and of each event in force, in their order. */
const timesCorrected = z.object({
  type: z.literal("times-corrected"),
  times: z.array(at).check(z.maxLength(bounds.entries + 1)),
});
/** What was said unasked, in whose words, and what of it was confirmed: answers that are given where their turn comes up. */
const told = z.object({
  type: z.literal("told"),
  words: z.string().check(z.maxLength(bounds.ownWords)),
  facts: z
    .array(
      z.object({
        turn: z.string().check(z.maxLength(bounds.turn)),
        answer: z.string().check(z.maxLength(bounds.id)),
      }),
    )
    .check(z.maxLength(bounds.facts)),
  /** The model that was named and confirmed. */
  model: z.optional(z.string().check(z.maxLength(bounds.code))),
  heard,
});

const entryShape = z.object({
  id,
  /** Rises within a journal. */
  seq: z.number().check(z.int(), z.minimum(1)),
  by: z.enum(["householder"]),
  /** When this device wrote or received it, by this device's clock. */
  at,
  /** When it was written, by the clock of another device; such an entry ends no wait. */
  written: z.optional(at),
  event: z.discriminatedUnion("type", [...actShapes, tookBack, startedAgain, timesCorrected, told]),
});

/** The shape of a journal. */
export const journalShape = z
  .object({
    format: z.literal(2),
    model: z.nullable(z.string().check(z.maxLength(bounds.code))),
    started: at,
    entries: z.array(entryShape).check(z.maxLength(bounds.entries)),
  })
  .check(
    z.refine(({ entries }) => new Set(entries.map((entry) => entry.id)).size === entries.length),
    z.refine(({ entries }) => entries.every(({ seq }, place) => seq > (entries[place - 1]?.seq ?? 0))),
  );

/** An answer to a turn that was not asked, as somebody stated it and confirmed that they did. */
export type Fact = { turn: string; answer: string };

/** What was said unasked. */
export type Told = {
  /** As they were typed, cut where nobody types on. */
  words: string;
  /** What was understood of them and confirmed; none where nothing was. */
  facts: readonly Fact[];
  /** A model code that they name, as the catalogue has it, confirmed likewise. */
  model?: string;
  /** It was said on the phone, and these are the words as an agent heard them. */
  heard?: true;
};

/** One entry: who did what, and when. Nothing is ever changed or removed; a later entry takes back what no longer holds. */
export type Entry = z.infer<typeof entryShape>;

/** The entries of one conversation in the order they were written: all that is stored or shared. */
export type Journal = z.infer<typeof journalShape>;
