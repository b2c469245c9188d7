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

/** What no storage took, for as long as the page lives. */
const inMemory = new Map<string, StopMark>();

/** Where the mark of a session lies in the browser's own storage. */
export const stopKey = (sessionName: string) => `${storageKey(sessionName)}:stop`;

/** The mark of a session, or null. A mark that cannot be read still stops: it counts as a danger of no known kind. */
export function readStop(sessionName: string): StopMark | null {
  try {
    const kept = localStorage.getItem(stopKey(sessionName));
    if (kept !== null) return parseStop(kept);
  } catch {
    // Denied: what is in memory counts.
  }
  return inMemory.get(sessionName) ?? null;
}

/** Keeps the first danger that was reported; a second one finds the session stopped already. */
export function keepStop(sessionName: string, mark: StopMark): void {
  if (readStop(sessionName)) return;
  try {
    localStorage.setItem(stopKey(sessionName), JSON.stringify(mark));
  } catch {
    // Full or denied. Only then: a mark in memory would outlive 'start again' in another tab.
    inMemory.set(sessionName, mark);
  }
}

/** For 'start again', and for nothing else. */
export function clearStop(sessionName: string): void {
  inMemory.delete(sessionName);
  try {
    localStorage.removeItem(stopKey(sessionName));
  } catch {
    // Denied: nothing was kept there either.
  }
}

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
