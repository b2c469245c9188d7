import * as z from "zod/mini";
import { bounds, type Log, parseLog } from "../session/index.ts";
import type { LogStore } from "./log-store.ts";

/** So many writes back a tab that slept is still known to have been seen. */
const longestLineage = 30;

const model = z.nullable(z.string().check(z.maxLength(bounds.code)));

/** That a person has said to go on: when, and on a page about which model. */
const consent = z.object({ at: z.string().check(z.maxLength(bounds.time)), model });
export type Consent = z.infer<typeof consent>;

/** Beside the log's own fields; a log without them was kept by an earlier version of this script. */
export const beside = z.object({
  revisions: z.array(z.string().check(z.maxLength(bounds.id))).check(z.maxLength(longestLineage)),
  consent: z.optional(consent),
  about: z.optional(model),
});

/** What lies beside a log: `about` is the model that a page named when it was begun, which nobody has confirmed. */
export type Beside = { consent: Consent | null; about: string | null };

/** A log that something else has kept. `isHeir`: whoever wrote it had seen what this tab last wrote. */
export type News = Beside & { log: Log; isHeir: boolean };

/** One tab's view of the one log that all tabs of a session share. */
export type SharedLog = {
  /** What another tab has kept since this one last read or wrote; null for nothing new, or nothing that is a log. */
  readNews(): News | null;
  /** False when it could not be kept. */
  write(log: Log, beside: Beside): boolean;
};

/**
 * Compares before each write: the text that is kept is its own revision. Beside the log lies which writes it follows
 * on, so that a tab whose own answers were written over can tell, and set them aside.
 * @param newId a short name that no other write has
 */
export function createSharedLog(store: LogStore, newId: () => string): SharedLog {
  let seen: string | null = null;
  let revisions: string[] = [];
  return {
    readNews: () => {
      const text = store.read();
      if (text === null || text === seen) return null;
      const value = parse(text);
      const log = parseLog(value);
      // Removed or spoilt: what this tab has on screen stands, and is kept with its next act.
      if (!log) return null;
      const own = beside.safeParse(value).data;
      const [mine] = revisions;
      seen = text;
      revisions = own?.revisions ?? [];
      return {
        // An earlier version took the page's model at its word; it is looked up like any other.
        log: { ...log, model: null },
        about: own?.about ?? log.model,
        consent: own?.consent ?? null,
        isHeir: mine === undefined || revisions.includes(mine),
      };
    },
    write: (log, { consent: given, about }) => {
      revisions = [newId(), ...revisions].slice(0, longestLineage);
      seen = JSON.stringify({
        ...log,
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
