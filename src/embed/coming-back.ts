import { type Guide, type Journal, type Log, type LogEvent, standingOf } from "../session/index.ts";
import type { Consent } from "./door.ts";
import type { LogStore } from "./log-store.ts";
import type { Surroundings } from "./surroundings.ts";
import { whenLoaded } from "./when-loaded.ts";

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
  if (standingOf(journal).log.events.some((event) => "turn" in event)) putUnreadAside(store, journal);
}

/** Sets aside what lies in place of a journal; whether it is one, is asked when somebody wants to go on with it. */
export function putUnreadAside(store: LogStore, kept: unknown): void {
  store.writeAside([kept, ...store.readAside()].slice(0, mostAside));
}

/** Whether the events that were dropped at a log's end hold anything that a person did. */
export function hasAnswers({ events }: Log, dropped: number): boolean {
  return dropped > 0 && events.slice(-dropped).some(isAct);
}

/** Whether anybody has done anything since the latest start. */
export const isBegun = (journal: Journal) => standingOf(journal).log.events.some(isAct);

const isAct = ({ type }: LogEvent) =>
  !["wait-ended", "session-resumed", "prepared-left", "water-left"].includes(type);

/** The journals that were set aside and can be gone on with; `show` is called once they can be checked, where that is later. */
export function readAside(
  { store, door, load }: Pick<Surroundings, "store" | "door" | "load">,
  show: () => void,
) {
  let journals: (Journal | null)[] = [];
  whenLoaded(
    () => {
      journals = store.readAside().map((kept) => door().parseJournal(kept));
    },
    load,
    show,
  );
  return journals;
}
