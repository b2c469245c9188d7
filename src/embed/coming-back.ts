import type { Guide, Log } from "../session/index.ts";
import type { LogStore } from "./log-store.ts";
import type { Consent } from "./shared-log.ts";

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

/** True where nothing of one log is missing in the other: its events begin with all of these. */
export function isPartOf(part: Log, whole: Log): boolean {
  return part.events.every((event, place) => {
    const { at: _, ...what } = event;
    const { at: __, ...other } = whole.events[place] ?? { at: "" };
    return JSON.stringify(what) === JSON.stringify(other);
  });
}

/** Sets a log aside to be gone on with later; one that nobody answered in is worth nothing. */
export function putAside(store: LogStore, log: Log): void {
  if (log.events.some((event) => "turn" in event))
    store.writeAside([log, ...store.readAside()].slice(0, mostAside));
}
