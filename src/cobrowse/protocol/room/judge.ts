import { relayBounds as bounds } from "../bounds.ts";
import { kinds, type Lane } from "../kinds.ts";
import type { Wait } from "../messages.ts";
import { agentsIn, endOf, type Room } from "./room.ts";

/** Whether something is taken, has to wait, or ends the connection. */
export type Verdict = "take" | { wait: Wait } | { no: "ended" | "gone" | "not-yours" | "full" };

/**
 * Whether a kind is ever somebody's to send on a lane. It holds for what is repeated too: a number that was kept on one
 * lane says nothing of the other, on which the same kind would be numbered.
 */
export function isTheirs(room: Room, id: string, lane: Lane, kind: string): boolean {
  const member = room.members.get(id);
  return member !== undefined && kinds[lane][member.role].includes(kind);
}

/**
 * Judges what somebody in a room wants to have kept. Nothing is carried while it would be shared with nobody, or while
 * the householder has paused: it stays on the device that it comes from.
 * @param id as the relay knows the connection; what it claims is not asked
 */
export function judge(room: Room, id: string, lane: Lane, kind: string, now: number): Verdict {
  if (room.ended || now >= endOf(room)) return { no: "ended" };
  const member = room.members.get(id);
  if (!member || member.gone) return { no: "gone" };
  if (!isTheirs(room, id, lane, kind)) return { no: "not-yours" };
  if (kind === "end" || kind === "leave") return "take";
  // Waiting would hold up the end, which comes after it on this lane.
  if (lane === "steering") return room.steered < bounds.steering ? "take" : { no: "full" };
  const isShared = agentsIn(room).some(({ admitted }) => admitted);
  if (!member.admitted || !isShared) return { wait: "not-admitted" };
  if (room.paused) return { wait: "paused" };
  return room.entries < bounds.entries ? "take" : { wait: "full" };
}

/**
 * Judges an agent who comes with a code that was good.
 * @param codeSeq the entry that had made that code; a later one has replaced it
 */
export function judgeJoin(room: Room, codeSeq: number, now: number): "take" | "no-such-code" | "full" {
  const isOver = room.ended || now >= endOf(room);
  if (isOver || room.code?.seq !== codeSeq || now >= room.code.at + bounds.codeLasts) return "no-such-code";
  return agentsIn(room).length + 1 < bounds.peers && room.steered < bounds.steering ? "take" : "full";
}
