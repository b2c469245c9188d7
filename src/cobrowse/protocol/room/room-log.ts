import { kinds, type Lane, type Role } from "../kinds.ts";
import type { RoomRecord } from "../messages.ts";

/** What is to be numbered. `sealed` is the digest of a newcomer's secret, which is never sent on. */
export type Draft = { from: string; n: number; kind: string; body: string; sealed?: string };

/** A draft with its place in the log. */
export type Stored = RoomRecord & { sealed?: string };

/** The entries of one room in their order, and those of each sender's lane: their numbers count from 1. */
export type RoomLog = { records: Stored[]; lanes: Map<string, Stored[]> };

/**
 * What became of a draft: numbered now, numbered before, or too early, where `last` is the last number kept. `moved`
 * says that it was judged by a log that others have steered since, `lost` that there is no such log any more.
 */
export type Placed =
  | { type: "fresh"; stored: Stored }
  | { type: "known"; stored: Stored }
  | { type: "missing"; last: number }
  | { type: "moved" }
  | { type: "lost" };

/** The lane of a kind: the kinds of the two are not the same. */
export function laneOf(kind: string): Lane {
  const isCarried = (["householder", "agent"] as Role[]).some((role) => kinds.carried[role].includes(kind));
  return isCarried ? "carried" : "steering";
}

/** A log without entries. */
export function createRoomLog(): RoomLog {
  return { records: [], lanes: new Map() };
}

/** Appends to a log in place, unless it has that sender's number already; a sender's numbers leave no gap. */
export function place(log: RoomLog, draft: Draft, at: number): Placed {
  const lane = `${draft.from} ${laneOf(draft.kind)}`;
  const own = log.lanes.get(lane) ?? [];
  const known = own[draft.n - 1];
  if (known) return { type: "known", stored: known };
  if (draft.n !== own.length + 1) return { type: "missing", last: own.length };
  const stored = { seq: log.records.length + 1, at, ...draft };
  log.records.push(stored);
  own.push(stored);
  log.lanes.set(lane, own);
  return { type: "fresh", stored };
}
