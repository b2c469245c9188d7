import { storageKey } from "./first-options.ts";

/**
 * A danger that somebody reported. It lies apart from the log, so that nothing that writes a log, in this tab or in
 * another one, can write over it: where it lies, the session is stopped. Only 'start again' takes it away.
 */
export type StopMark = {
  /** A danger of the opening, or `not-sure`. */
  danger: string;
  /** RFC 3339 with the person's own offset. */
  at: string;
};

/** Longer than any id or instant; what is longer was never written by us. */
const LONGEST = 80;

/** Where the mark of a session lies in the browser's own storage. */
export const stopKey = (sessionName: string) => `${storageKey(sessionName)}:stop`;

/**
 * The marks of one page.
 * @param places the storage that all tabs share, then one of this tab's own: it outlives a reload where the first is full
 */
export function createStops(places: (() => Storage)[]) {
  /** What no shared storage took, for as long as the page lives. */
  const inMemory = new Map<string, StopMark>();

  /** Each place in turn until one gives something; a place that is full or denied gives nothing. */
  const attempt = <T>(work: (place: Storage) => T, among = places): T | null => {
    for (const place of among) {
      try {
        const given = work(place());
        if (given !== null) return given;
      } catch {
        // Full or denied.
      }
    }
    return null;
  };

  /** The mark of a session, or null. A mark that cannot be read still stops: it counts as a danger of no known kind. */
  function readStop(sessionName: string): StopMark | null {
    const kept = attempt((place) => place.getItem(stopKey(sessionName)));
    return kept === null ? (inMemory.get(sessionName) ?? null) : parseStop(kept);
  }

  /**
   * Keeps the first danger that was reported; a second one finds the session stopped already, and tries again to tell
   * the other tabs where that failed the first time.
   */
  function keepStop(sessionName: string, mark: StopMark): void {
    const key = stopKey(sessionName);
    const text = JSON.stringify(readStop(sessionName) ?? mark);
    const put = (place: Storage) => {
      if (place.getItem(key) === null) place.setItem(key, text);
      return true;
    };
    // A full storage has room for it once what was set aside has gone.
    const makeRoom = (place: Storage) => {
      for (const beside of [":whole", ":aside"]) place.removeItem(storageKey(sessionName) + beside);
      return put(place);
    };
    const shared = places.slice(0, 1);
    // Elsewhere only where that fails: it would outlive 'start again' in another tab.
    if (attempt(put, shared) || attempt(makeRoom, shared)) {
      forget(sessionName, places.slice(1));
      return;
    }
    inMemory.set(sessionName, parseStop(text));
    attempt(put, places.slice(1));
  }

  /** For 'start again', and for nothing else. */
  function clearStop(sessionName: string): void {
    forget(sessionName, places);
  }

  function forget(sessionName: string, among: (() => Storage)[]): void {
    inMemory.delete(sessionName);
    attempt((place) => {
      place.removeItem(stopKey(sessionName));
      return null;
    }, among);
  }

  return { readStop, keepStop, clearStop };
}

/** The marks of this page, in the browser's own storage. */
export const { readStop, keepStop, clearStop } = createStops([() => localStorage, () => sessionStorage]);

function parseStop(kept: string): StopMark {
  try {
    const { danger, at } = JSON.parse(kept.slice(0, 4 * LONGEST));
    if ([danger, at].every((text) => typeof text === "string" && text.length <= LONGEST))
      return { danger, at };
  } catch {
    // Not ours, or cut short.
  }
  return { danger: "not-sure", at: "1970-01-01T00:00:00Z" };
}
