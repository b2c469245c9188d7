import { type Guide, type Journal, type Log, standingOf } from "../session/index.ts";
import type { LogStore } from "./log-store.ts";
import type { Consent } from "./shared-journal.ts";

const DAY_MS = 86_400_000;

/** So many sessions are kept aside; each is some ten kilobytes at most. */
const mostAside = 8;

/** When something last happened in a session; RFC 3339. */
export const lastActIn = (log: Log) => log.events.at(-1)?.at ?? log.started;

/** True where so long ago nothing is gone on with by itself; what a person agreed to since counts as new. */
export function isTooOld(log: Log, given: Consent | null, now: string, { flow }: Guide): boolean {
  const days = flow.limits["session-days"]?.value ?? Number.POSITIVE_INFINITY;
  const last = Math.max(
    ...[lastActIn(log), ...(given ? [given.at] : [])].map(Date.parse).filter(Number.isFinite),
  );
  return Date.parse(now) - last > days * DAY_MS;
}

/** True where no answer that is in force in one journal is unknown to the other. */
export function isPartOf(part: Journal, whole: Journal): boolean {
  const known = new Set(whole.entries.map(({ id }) => id));
  const { log, ids } = standingOf(part);
  return log.events.every((event, place) => !("turn" in event) || known.has(ids[place] ?? ""));
}

/** Sets a journal aside to be gone on with later; one that nobody answered in is worth nothing. */
export function putAside(store: LogStore, journal: Journal): void {
  if (standingOf(journal).log.events.some((event) => "turn" in event))
    store.writeAside([journal, ...store.readAside()].slice(0, mostAside));
}
