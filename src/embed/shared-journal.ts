import * as z from "zod/mini";
import { bounds, type Journal, parseJournal } from "../session/index.ts";
import type { LogStore } from "./log-store.ts";

/** So many writes back a tab that slept is still known to have been seen. */
const longestLineage = 30;

const model = z.nullable(z.string().check(z.maxLength(bounds.code)));

/** That a person has said to go on: when, and on a page about which model. */
const consent = z.object({ at: z.string().check(z.maxLength(bounds.time)), model });
export type Consent = z.infer<typeof consent>;

/** Beside the journal's own fields; a log of an earlier version may lack them. */
export const beside = z.object({
  revisions: z.array(z.string().check(z.maxLength(bounds.id))).check(z.maxLength(longestLineage)),
  consent: z.optional(consent),
  about: z.optional(model),
});

/** What lies beside a journal: `about` is the model that a page named when it was begun, which nobody has confirmed. */
export type Beside = { consent: Consent | null; about: string | null };

/** A journal that something else has kept. `isHeir`: whoever wrote it had seen what this tab last wrote. */
export type News = Beside & { journal: Journal; isHeir: boolean };

/** One tab's view of the one journal that all tabs of a session share. */
export type SharedJournal = {
  /** What another tab has kept since this one last read or wrote; null for nothing new, or nothing that is a journal. */
  readNews(): News | null;
  /** False when it could not be kept. */
  write(journal: Journal, beside: Beside): boolean;
};

/**
 * Compares before each write: the text that is kept is its own revision. Beside the journal lies which writes it follows
 * on, so that a tab whose own answers were written over can tell, and set them aside.
 * @param newId a short name that no other write has
 */
export function createSharedJournal(store: LogStore, newId: () => string): SharedJournal {
  let seen: string | null = null;
  let revisions: string[] = [];
  return {
    readNews: () => {
      const text = store.read();
      if (text === null || text === seen) return null;
      const value = parse(text);
      const journal = parseJournal(value);
      // Removed or spoilt: what this tab has on screen stands, and is kept with its next act.
      if (!journal) return null;
      const own = beside.safeParse(value).data;
      const [mine] = revisions;
      seen = text;
      revisions = own?.revisions ?? [];
      return {
        // An earlier version took the page's model at its word; it is looked up like any other.
        journal: { ...journal, model: null },
        about: own?.about ?? journal.model,
        consent: own?.consent ?? null,
        isHeir: mine === undefined || revisions.includes(mine),
      };
    },
    write: (journal, { consent: given, about }) => {
      // What nobody could read again is better not written over what can be read.
      if (journal.entries.length > bounds.entries) return false;
      revisions = [newId(), ...revisions].slice(0, longestLineage);
      seen = JSON.stringify({
        ...journal,
        revisions,
        ...(given && { consent: given }),
        ...(about !== null && { about }),
      });
      return store.write(seen);
    },
  };
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
