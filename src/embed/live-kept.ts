import type { KeptEnd } from "../cobrowse/client/index.ts";
import { createSender, type Lane } from "../cobrowse/protocol/index.ts";

/** What a page that is loaded again needs of a room. */
export type KeptLive = {
  end: KeptEnd | null;
  /** `until` in milliseconds since 1970. */
  code: { text: string; until: number } | null;
  /** The last number of the room's log that the page was told of. */
  seen: number;
  /** It was ended here, and the relay may not have heard of it. */
  isOver: boolean;
};

/** Characters of all that is kept: a full room has 500 messages of 4 kB, and a phone's queue a part of them. */
const longest = 2_000_000;

const isNumber = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0;
const isText = (value: unknown): value is string => typeof value === "string";

/** Reads what was kept, by hand: a phone has no room for a schema. Null for anything else. */
export function readKeptLive(text: string | null, now: number): KeptLive | null {
  try {
    if (text === null || text.length > longest) return null;
    const { end, code, seen, isOver } = JSON.parse(text);
    return {
      end: end && readEnd(end, now),
      code:
        isText(code?.text) && isNumber(code.until)
          ? { text: code.text.slice(0, 20), until: code.until }
          : null,
      seen: isNumber(seen) ? seen : 0,
      isOver: isOver === true,
    };
  } catch {
    return null;
  }
}

function readEnd(
  { place, senders }: { place: unknown; senders: Record<Lane, unknown> },
  now: number,
): KeptEnd {
  const { room, peer, secret } = (place ?? {}) as Record<string, unknown>;
  const sender = (lane: Lane) => {
    const { last, queue } = senders[lane] as { last: number; queue: { kind: string; body: string }[] };
    const first = last - queue.length + 1;
    return {
      ...createSender(lane, now),
      last,
      queue: queue.map(({ kind, body }, at) => {
        if (!isText(kind) || !isText(body)) throw new TypeError("Something else was kept");
        return { type: "put" as const, lane, n: first + at, kind, body };
      }),
    };
  };
  return {
    place: isText(room) && isText(peer) && isText(secret) ? { room, peer, secret } : null,
    senders: { steering: sender("steering"), carried: sender("carried") },
  };
}
