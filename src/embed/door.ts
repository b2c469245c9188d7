import * as z from "zod/mini";
import { bounds } from "../session/index.ts";

/*
 * The code that checks what was kept, in a file of its own: the first visit needs none of it, and all else that checks
 * data from outside takes the same library from here.
 */

export { parseJournal } from "../session/index.ts";
export { createDrafts } from "./drafts.ts";

const model = z.nullable(z.string().check(z.maxLength(bounds.code)));

/** That a person has said to go on: when, and on a page about which model. */
const consent = z.object({ at: z.string().check(z.maxLength(bounds.time)), model });
export type Consent = z.infer<typeof consent>;

/** Beside the journal's own fields; a log of an earlier version may lack them. */
export const beside = z.object({
  revisions: z.array(z.string().check(z.maxLength(bounds.id))).check(z.maxLength(bounds.lineage)),
  consent: z.optional(consent),
  about: z.optional(model),
});

/** What lies beside a journal; undefined for anything else. Never throws. */
export const parseBeside = (value: unknown): z.infer<typeof beside> | undefined =>
  beside.safeParse(value).data;
