import { bounds, type Journal } from "../session/index.ts";
import type { Consent } from "./door.ts";
import type { LogStore } from "./log-store.ts";
import type { Door } from "./missing.ts";

/** What lies beside a journal: `about` is the model that a page named when it was begun, which nobody has confirmed. */
export type Beside = { consent: Consent | null; about: string | null };

/** A journal that something else has kept. `isHeir`: whoever wrote it had seen what this tab last wrote. */
export type News = Beside & { journal: Journal; isHeir: boolean };

/** One tab's view of the one journal that all tabs of a session share. */
export type SharedJournal = {
  /** What another tab has kept since this one last read or wrote; null for nothing new, or nothing that is a journal. */
  readNews(): News | null;
  /** The same as it lies there, unchecked: to be put aside, and to be checked when it is come back to. */
  takeUnread(): unknown;
  /** False when it could not be kept. */
  write(journal: Journal, beside: Beside): boolean;
};

/**
 * Compares before each write: the text that is kept is its own revision. Beside the journal lies which writes it follows
 * on, so that a tab whose own answers were written over can tell, and set them aside.
 * @param newId a short name that no other write has
 * @param door throws where what was kept cannot be checked yet; then nothing counts as seen
 */
export function createSharedJournal(store: LogStore, newId: () => string, door: () => Door): SharedJournal {
  let seen: string | null = null;
  let revisions: string[] = [];
  return {
    readNews: () => {
      const text = store.read();
      if (text === null || text === seen) return null;
      const { parseJournal, parseBeside } = door();
      const value = parse(text);
      const journal = parseJournal(value);
      // Removed or spoilt: what this tab has on screen stands, and is kept with its next act.
      if (!journal) return null;
      const own = parseBeside(value);
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
    takeUnread: () => {
      const text = store.read();
      if (text === seen) return null;
      seen = text;
      return text && parse(text);
    },
    write: (journal, { consent: given, about }) => {
      // What nobody could read again is better not written over what can be read.
      if (journal.entries.length > bounds.entries) return false;
      revisions = [newId(), ...revisions].slice(0, bounds.lineage);
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
