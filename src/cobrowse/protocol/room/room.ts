import { relayBounds as bounds } from "../bounds.ts";
import type { Lane, Role } from "../kinds.ts";
import { laneOf, type Stored } from "./room-log.ts";

/** Somebody in a room. */
export type Member = {
  id: string;
  role: Role;
  name: string;
  /** The digest of the secret that they come back with. */
  sealed: string;
  /** Let in by the householder, who always is. */
  admitted: boolean;
  /** Left, or was turned away: does not come back. */
  gone: boolean;
  /** The number of their last message on each lane that was kept. */
  last: Record<Lane, number>;
};

/** What a room has come to: what its log, folded, says. */
export type Room = {
  seq: number;
  opened: number;
  /** The entry that made the code which is good now, and when; none once it was used. */
  code: { seq: number; at: number } | null;
  members: ReadonlyMap<string, Member>;
  paused: boolean;
  ended: boolean;
  /** Entries and suggestions, and everything else, as far as they count against the bounds. */
  entries: number;
  steered: number;
};

/** A room before its first entry. */
export const noRoom: Room = {
  seq: 0,
  opened: 0,
  code: null,
  members: new Map(),
  paused: false,
  ended: false,
  entries: 0,
  steered: 0,
};

/** The room after one more entry of its log. */
export function roomAfter(room: Room, { seq, at, from, n, kind, body, sealed = "" }: Stored): Room {
  const members = new Map(room.members);
  const change = (id: string, to: Partial<Member>) => {
    const one = members.get(id);
    if (one) members.set(id, { ...one, ...to });
  };
  const lane = laneOf(kind);
  const base = { name: "", sealed, gone: false, last: { carried: 0, steering: 0 } };
  if (kind === "opened") members.set(from, { ...base, id: from, role: "householder", admitted: true });
  if (kind === "joined") members.set(from, { ...base, id: from, role: "agent", admitted: false, name: body });
  const last = members.get(from)?.last;
  if (last) change(from, { last: { ...last, [lane]: n } });
  const isAgent = members.get(body)?.role === "agent";
  if (kind === "admit" && isAgent) change(body, { admitted: true });
  if (kind === "turn-away" && isAgent) change(body, { admitted: false, gone: true });
  if (kind === "leave") change(from, { admitted: false, gone: true });
  return {
    seq,
    members,
    opened: kind === "opened" ? at : room.opened,
    code: kind === "opened" || kind === "code" ? { seq, at } : kind === "joined" ? null : room.code,
    paused: kind === "pause" || (room.paused && kind !== "resume"),
    ended: room.ended || kind === "end",
    entries: room.entries + (lane === "carried" ? 1 : 0),
    steered: room.steered + (lane === "steering" ? 1 : 0),
  };
}

/** Agents that have not gone. */
export function agentsIn(room: Room): Member[] {
  return [...room.members.values()].filter(({ role, gone }) => role === "agent" && !gone);
}

/** When the code that is good now ends, or null where there is none. */
export function codeEnds(room: Room): number | null {
  return room.code && room.code.at + bounds.codeLasts;
}

/** When a room ends by itself: two hours after it was opened, or with its code while nobody has ever joined. */
export function endOf(room: Room): number {
  const hasJoined = room.members.size > 1;
  return hasJoined
    ? room.opened + bounds.roomLasts
    : Math.min(room.opened + bounds.roomLasts, codeEnds(room) ?? 0);
}

/** Up to which entry somebody may see the log: nothing before they are let in. */
export function visibleTo(room: Room, id: string): number {
  const one = room.members.get(id);
  return one?.admitted && !one.gone ? room.seq : 0;
}
