import {
  acknowledged,
  createReceiver,
  createSender,
  delayed,
  due,
  enqueue,
  type First,
  fits,
  type Lane,
  type RoomRecord,
  readFromRelay,
  receive,
  reconnected,
  released,
  type Sender,
  upTo,
  version,
  type Why,
} from "../protocol/index.ts";

/** Milliseconds: until a line without a welcome is none, until one without an answer is none, between two questions. */
const [welcomeWithin, answerWithin, askEvery] = [10_000, 15_000, 30_000];

const lanes: readonly Lane[] = ["steering", "carried"];

/** What somebody comes back with. */
export type Place = { room: string; peer: string; secret: string };

/** What an end keeps where a reload finds it: who it is there, and what it has said that nobody has acknowledged. */
export type KeptEnd = { place: Place | null; senders: Record<Lane, Sender> };

/** What an end tells whoever uses it. Times are milliseconds from now. */
export type Told =
  | { type: "welcome"; peer: string; endsIn: number }
  | { type: "code"; code: string; endsIn: number }
  /** The next entry of the room's log, each once and in its order, from the first on after each reload. */
  | { type: "record"; record: RoomRecord }
  /** All was told that the log has so far. */
  | { type: "all" }
  /** The room takes no more: what waits stays here. */
  | { type: "full" }
  | { type: "moving"; wait: number; to?: string }
  | { type: "no"; why: Why; wait?: number };

export type EndMeans = {
  now(): number;
  /** Keeps what a reload has to find; called before anything of it is sent. */
  keep(kept: KeptEnd): void;
  told(told: Told): void;
};

/** One end of a shared room on whatever line it has; PROTOCOL.md says what it does and why. */
export type End = {
  /** Says one thing, now or as soon as there is a line. @returns false where it is longer than the relay takes */
  say(kind: string, body?: string, lane?: Lane): boolean;
  /** What was said on a lane and has not been acknowledged. */
  unheard(lane: Lane): readonly { kind: string; body: string }[];
  /** While held, nothing that is carried leaves this device. */
  hold(isHeld: boolean): void;
  /** A line is up, on which `send` puts a text. */
  up(send: (text: string) => void): void;
  hear(text: string): void;
  /** The line is gone. */
  down(): void;
  /** Sends what is due; call it about once a second, and whenever something was said. @returns false for a dead line */
  beat(): boolean;
};

/**
 * An end that says who it is by `first`, or comes back to where it was.
 * @param kept as it was kept by the page before
 */
export function createEnd(first: First, kept: KeptEnd | null, { now, keep, told }: EndMeans): End {
  let place = kept?.place ?? null;
  const senders = kept?.senders ?? {
    steering: createSender("steering", now()),
    carried: createSender("carried", now()),
  };
  let receiver = createReceiver();
  let send: ((text: string) => void) | null = null;
  let isIn = false;
  let isHeld = false;
  /** Since when something was asked that nobody has answered. */
  let asked = Number.POSITIVE_INFINITY;
  let askedLast = 0;
  const save = () => keep({ place, senders });

  function ask(): void {
    askedLast = now();
    asked = Math.min(asked, askedLast);
    send?.(JSON.stringify({ type: "ask", after: receiver.last }));
  }

  function flush(): void {
    if (!send || !isIn) return;
    for (const lane of lanes) {
      if (isHeld && lane === "carried") continue;
      const [sender, puts] = due(senders[lane], now());
      senders[lane] = sender;
      for (const put of puts) send(JSON.stringify(put));
    }
  }

  function got(received: ReturnType<typeof receive>, record?: RoomRecord): void {
    receiver = received.receiver;
    if (received.take && record) {
      if (record.kind === "resume" || record.kind === "admit") senders.carried = released(senders.carried);
      told({ type: "record", record });
    }
    if (received.ask) ask();
  }

  return {
    say(kind, body = "", lane = "carried") {
      if (!fits(kind, body)) return false;
      senders[lane] = enqueue(senders[lane], kind, body);
      save();
      flush();
      return true;
    },
    unheard: (lane) => senders[lane].queue,
    hold(held) {
      isHeld = held;
      flush();
    },
    up(put) {
      send = put;
      isIn = false;
      asked = now();
      askedLast = now();
      put(JSON.stringify(place ? { type: "return", v: version, ...place, after: receiver.last } : first));
    },
    down() {
      send = null;
      isIn = false;
      asked = Number.POSITIVE_INFINITY;
    },
    hear(text) {
      const message = readFromRelay(text);
      if (!message || !send || ("lane" in message && !lanes.includes(message.lane))) return;
      // Whatever comes before the welcome does not take its place.
      if (isIn || message.type === "welcome") asked = Number.POSITIVE_INFINITY;
      if (message.type === "welcome") {
        const { room, peer, secret, endsIn } = message;
        isIn = true;
        for (const lane of lanes) senders[lane] = reconnected(senders[lane], message[lane], now());
        if (secret) place = { room, peer, secret };
        save();
        told({ type: "welcome", peer, endsIn });
      } else if (message.type === "kept")
        senders[message.lane] = acknowledged(senders[message.lane], message.n, now());
      else if (message.type === "missing" || message.type === "wait") {
        senders[message.lane] = delayed(senders[message.lane], now());
        if (message.type === "wait" && message.why === "full") told({ type: "full" });
      } else if (message.type === "record") {
        const { type: _, ...record } = message;
        got(receive(receiver, record.seq, now()), record);
      } else if (message.type === "all") {
        got(upTo(receiver, message.seq, now()));
        if (message.seq === receiver.last) told({ type: "all" });
      } else told(message);
      flush();
    },
    beat() {
      if (!send) return true;
      if (now() - asked > (isIn ? answerWithin : welcomeWithin)) return false;
      if (isIn && now() - askedLast > askEvery) ask();
      flush();
      return true;
    },
  };
}
