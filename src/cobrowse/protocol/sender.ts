import { type Bucket, takeOne } from "./bucket.ts";
import type { Lane } from "./kinds.ts";
import type { Put } from "./messages.ts";

/** Well below what the relay allows, so that questions and a second try have room. */
const pace = { perSecond: 4, burst: 10 };
/** So many messages are on their way at a time. */
const ahead = 8;
/** Milliseconds until an unanswered message is repeated: at first, and at most. */
const [soon, late] = [2000, 30_000];

/**
 * What somebody sends on one lane and has not been acknowledged yet. Plain data: whoever keeps it before they send, and takes it up
 * again after a reload, loses nothing and says nothing twice.
 */
export type Sender = {
  lane: Lane;
  /** The number that was given last. */
  last: number;
  /** What was not acknowledged, in order. */
  queue: Put[];
  /** The number that was sent last on this line. */
  sent: number;
  /** When the first of the queue is repeated. */
  again: number;
  /** Nothing is sent before this instant. */
  from: number;
  /** Milliseconds until the next repetition; doubles each time. */
  wait: number;
  bucket: Bucket;
};

/** A sender that has said nothing; its first welcome says which numbers are gone. */
export function createSender(lane: Lane, now: number): Sender {
  return {
    lane,
    last: 0,
    queue: [],
    sent: 0,
    again: 0,
    from: 0,
    wait: soon,
    bucket: { level: pace.burst, at: now },
  };
}

/** Gives a message its number. Check that it `fits` first: the relay hangs up on a longer one. */
export function enqueue(sender: Sender, kind: string, body: string): Sender {
  const n = sender.last + 1;
  return { ...sender, last: n, queue: [...sender.queue, { type: "put", lane: sender.lane, n, kind, body }] };
}

/** What is to be sent now, in its order; the sender knows afterwards that it was. */
export function due(sender: Sender, now: number): [sender: Sender, puts: Put[]] {
  let { sent, again, wait, bucket } = sender;
  const [first] = sender.queue;
  if (!first || now < sender.from) return [sender, []];
  if (sent >= first.n && now >= again) {
    sent = first.n - 1;
    wait = Math.min(late, wait * 2);
  }
  const puts: Put[] = [];
  for (const put of sender.queue.slice(0, ahead)) {
    if (put.n <= sent) continue;
    const left = takeOne(bucket, now, pace);
    if (!left) break;
    bucket = left;
    sent = put.n;
    again = now + wait;
    puts.push(put);
  }
  return [{ ...sender, sent, again, wait, bucket }, puts];
}

/** When to ask `due` again, or null while nothing is left to say. */
export function nextDue(sender: Sender, now: number): number | null {
  const [first] = sender.queue;
  if (!first) return null;
  if (now < sender.from) return sender.from;
  const last = sender.queue.slice(0, ahead).at(-1)?.n ?? 0;
  return sender.sent < last ? now + 1000 / pace.perSecond : sender.again;
}

/** The relay has kept all up to this number. */
export function acknowledged(sender: Sender, n: number, now: number): Sender {
  if (!sender.queue.some((put) => put.n <= n)) return sender;
  const queue = sender.queue.filter((put) => put.n > n);
  return { ...sender, queue, sent: Math.max(sender.sent, n), wait: soon, again: now + soon };
}

/** On a new line, whose welcome names the last number that was kept: all after it is sent at once. */
export function reconnected(sender: Sender, last: number, now: number): Sender {
  const after = acknowledged(sender, last, now);
  return { ...after, last: Math.max(after.last, last), sent: last, from: 0, wait: soon };
}

/** Something on the way was lost, or has to wait: it is repeated after the usual time, without asking for it sooner. */
export function delayed(sender: Sender, now: number): Sender {
  const [first] = sender.queue;
  if (!first || sender.sent < first.n) return sender;
  return { ...sender, sent: first.n - 1, from: now + sender.wait, wait: Math.min(late, sender.wait * 2) };
}

/** What was waited for has come, such as an admission: it goes on now. */
export function released(sender: Sender): Sender {
  return { ...sender, from: 0, wait: soon };
}
