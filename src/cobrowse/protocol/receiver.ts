/** Milliseconds until the same is asked for again. */
const patience = 2000;

/** How far somebody has come in a room's log. Keep it together with what was received, in one write. */
export type Receiver = {
  /** The number of the last entry that was taken; all before it were. */
  last: number;
  /** Nothing is asked for before this instant. */
  askFrom: number;
};

/** What to do about something that came: take it as the next one, ask for all after the last, or neither. */
export type Received = { receiver: Receiver; take: boolean; ask: boolean };

/** A receiver of a log that it has up to this number. */
export function createReceiver(last = 0): Receiver {
  return { last, askFrom: 0 };
}

/** An entry came. What is known is passed over; what comes too early is left, and what lies before it asked for. */
export function receive(receiver: Receiver, seq: number, now: number): Received {
  if (seq === receiver.last + 1) return { receiver: { last: seq, askFrom: 0 }, take: true, ask: false };
  return { ...upTo(receiver, seq, now), take: false };
}

/** The relay says that a log goes up to this number. */
export function upTo(receiver: Receiver, seq: number, now: number): Received {
  const ask = seq > receiver.last && now >= receiver.askFrom;
  return { receiver: ask ? { ...receiver, askFrom: now + patience } : receiver, take: false, ask };
}
