import { messageBounds } from "./bounds.ts";
import type { Lane } from "./kinds.ts";

/** The version of the protocol; the first message names it. */
export const version = 1;

/** One message with its sender's number, which counts from 1 on each lane. Who its sender is, the relay knows by the connection. */
export type Put = { type: "put"; lane: Lane; n: number; kind: string; body: string };

/** What comes first on a connection, and nothing else does: the only place of a secret. */
export type First =
  | { type: "open"; v: number }
  | { type: "join"; v: number; code: string; token: string }
  | { type: "return"; v: number; room: string; peer: string; secret: string; after: number };

/** What is sent to the relay. */
export type ToRelay = First | Put | { type: "ask"; after: number };

/**
 * One entry of a room's log: numbered once, in one order for everybody. `at` is the relay's clock, milliseconds. The
 * relay writes two kinds itself: `opened` and `joined`, with the agent's name; each is the first that its sender steers.
 */
export type RoomRecord = { seq: number; from: string; n: number; at: number; kind: string; body: string };

/** Why a message has to wait: its sender keeps it and repeats it later. */
export type Wait = "paused" | "not-admitted" | "full";

/**
 * Why the relay hangs up. After `replaced`, `ended`, `gone` and `unknown` there is nothing to come back to; after
 * `too-often`, `locked`, `busy` and `full` one may try again, after `wait`; the others are mistakes of the sender.
 */
export type Why =
  | "replaced"
  | "ended"
  | "gone"
  | "unknown"
  | "too-often"
  | "locked"
  | "busy"
  | "full"
  | "no-such-code"
  | "no-such-token"
  | "malformed"
  | "not-yours"
  | "number-taken"
  | "flood"
  | "silent";

/** What the relay sends; `welcome` has the last number that was kept of each lane. Times are spans in milliseconds, as clocks differ. */
export type FromRelay =
  | ({ type: "welcome"; room: string; peer: string; endsIn: number; secret?: string } & Record<Lane, number>)
  | { type: "code"; code: string; endsIn: number }
  | { type: "kept"; lane: Lane; n: number; seq: number }
  | { type: "missing"; lane: Lane; last: number }
  | { type: "wait"; lane: Lane; n: number; why: Wait }
  | ({ type: "record" } & RoomRecord)
  | { type: "all"; seq: number }
  | { type: "moving"; wait: number; to?: string }
  | { type: "no"; why: Why; wait?: number };

/** The fields of each message of the relay: n a number from 0, s a text, a question mark where it may be missing. */
const fields: Record<FromRelay["type"], string> = {
  welcome: "room:s peer:s carried:n steering:n endsIn:n secret:s?",
  code: "code:s endsIn:n",
  kept: "lane:s n:n seq:n",
  missing: "lane:s last:n",
  wait: "lane:s n:n why:s",
  record: "seq:n from:s n:n at:n kind:s body:s",
  all: "seq:n",
  moving: "wait:n to:s?",
  no: "why:s wait:n?",
};

/**
 * Reads what the relay sent, by hand, as a phone has no room for a schema. What it carries is the reader's to check.
 * @returns the known fields alone, or null where it is none of the protocol's messages
 */
export function readFromRelay(text: string): FromRelay | null {
  try {
    const given = JSON.parse(text);
    if (!Object.hasOwn(fields, given.type)) return null;
    const read: Record<string, unknown> = { type: given.type };
    for (const field of fields[given.type as FromRelay["type"]].split(" ")) {
      const [name = "", shape] = field.split(":");
      const value = given[name];
      if (value === undefined && shape?.[1]) continue;
      if (shape?.[0] === "s" ? typeof value !== "string" : !(Number.isSafeInteger(value) && value >= 0))
        return null;
      read[name] = value;
    }
    return read as FromRelay;
  } catch {
    return null;
  }
}

/** Bytes of a text as UTF-8, in which half a pair counts as the replacement character does. */
export function bytesOf(text: string): number {
  let bytes = 0;
  for (const character of text) {
    const point = character.codePointAt(0) ?? 0;
    bytes += point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
  }
  return bytes;
}

/** Whether the relay would take this much in one message, whichever number it gets. */
export function fits(kind: string, body: string): boolean {
  const put: Put = { type: "put", lane: "steering", n: messageBounds.number, kind, body };
  return body.length <= messageBounds.body && bytesOf(JSON.stringify(put)) <= messageBounds.message;
}
