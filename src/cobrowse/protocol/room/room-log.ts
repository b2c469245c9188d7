import type { RoomRecord } from "../messages.ts";

/** What is to be numbered. `sealed` is the digest of a newcomer's secret, which is never sent on. */
export type Draft = { from: string; n: number; kind: string; body: string; sealed?: string };

/** A draft with its place in the log. */
export type Stored = RoomRecord & { sealed?: string };

/** The entries of one room in their order, and where those of each sender are: the one with the number n at place n. */
export type RoomLog = { records: Stored[]; bySender: Map<string, Stored[]> };

/** What became of a draft: numbered now, numbered before, or too early, where `last` is the last number kept. */
export type Placed =
  | { type: "fresh"; stored: Stored }
  | { type: "known"; stored: Stored }
  | { type: "missing"; last: number };

/** A log without entries. */
export function createRoomLog(): RoomLog {
  return { records: [], bySender: new Map() };
}

/** Appends to a log in place, unless it has that sender's number already; a sender's numbers leave no gap. */
export function place(log: RoomLog, draft: Draft, at: number): Placed {
  const own = log.bySender.get(draft.from) ?? [];
  const known = own[draft.n];
  if (known) return { type: "known", stored: known };
  if (draft.n !== own.length) return { type: "missing", last: own.length - 1 };
  const stored = { seq: log.records.length + 1, at, ...draft };
  log.records.push(stored);
  log.bySender.set(draft.from, [...own, stored]);
  return { type: "fresh", stored };
}
