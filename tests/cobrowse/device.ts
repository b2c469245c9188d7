import {
  acknowledged,
  createReceiver,
  createSender,
  delayed,
  due,
  enqueue,
  type First,
  type Lane,
  type Receiver,
  type RoomRecord,
  readFromRelay,
  receive,
  reconnected,
  released,
  type Sender,
  upTo,
} from "../../src/cobrowse/protocol/index.ts";
import type { Lab, LossyLine } from "./lossy.ts";

type Kept = {
  place?: { room: string; peer: string; secret: string };
  senders: Record<Lane, Sender>;
  receiver: Receiver;
  journal: RoomRecord[];
};

/** A phone or a desk in a simulation: it keeps what it says before it sends it, and what it received when a test says so. */
export class Device {
  state: Kept;
  line: LossyLine | null = null;
  code = "";
  /** The last reason that the relay gave for hanging up. */
  no = "";
  private disk: string;
  private isIn = false;
  private dialled = 0;
  /** When it asked for what it has had no answer to. */
  private unanswered = Number.POSITIVE_INFINITY;
  /** Whether the relay has last said that there is nothing more. */
  hasAll = false;
  readonly lab: Lab;
  readonly first: First;

  constructor(lab: Lab, first: First) {
    this.lab = lab;
    this.first = first;
    const { now } = lab.clock;
    const senders = { carried: createSender("carried", now), steering: createSender("steering", now) };
    this.state = { senders, receiver: createReceiver(), journal: [] };
    this.disk = JSON.stringify(this.state);
  }

  say(kind: string, body = "", lane: Lane = "carried") {
    this.state.senders[lane] = enqueue(this.state.senders[lane], kind, body);
    this.keep();
  }

  keep() {
    this.disk = JSON.stringify(this.state);
  }

  /** The page is loaded again: what was not kept is gone. */
  reload() {
    this.line?.drop();
    this.state = JSON.parse(this.disk);
  }

  /** Dials where there is no line, else sends what is due. */
  act() {
    if (!this.line?.isUp) return this.dial();
    // A line on which nobody says welcome is none.
    if (!this.isIn && this.lab.clock.now > this.dialled + 10_000) this.line.drop();
    if (this.lab.clock.now > this.unanswered + 15_000) this.line.drop();
    if (!this.isIn) return;
    for (const lane of ["steering", "carried"] as const) {
      const [sender, puts] = due(this.state.senders[lane], this.lab.clock.now);
      this.state.senders[lane] = sender;
      for (const put of puts) this.line.toRelay.push(JSON.stringify(put));
    }
  }

  /** Asks how far the log has come, as a phone does now and then. */
  ask() {
    this.hasAll = false;
    if (!this.isIn || !this.line?.isUp) return;
    this.unanswered = Math.min(this.unanswered, this.lab.clock.now);
    this.send({ type: "ask", after: this.state.receiver.last });
  }

  private dial() {
    this.isIn = false;
    this.hasAll = false;
    this.unanswered = Number.POSITIVE_INFINITY;
    this.dialled = this.lab.clock.now;
    // What comes late on an older line is heard by nobody.
    const line: LossyLine = this.lab.dial((text) => line === this.line && this.hear(text));
    this.line = line;
    const { place, receiver } = this.state;
    this.send(place ? { type: "return", v: 1, ...place, after: receiver.last } : this.first);
  }

  private send(message: object) {
    this.line?.toRelay.push(JSON.stringify(message));
  }

  private hear(text: string) {
    const message = readFromRelay(text);
    if (!message) throw new Error(`The relay said what is none of the protocol: ${text}`);
    this.unanswered = Number.POSITIVE_INFINITY;
    const { now } = this.lab.clock;
    const { senders } = this.state;
    if (message.type === "welcome") {
      const { room, peer, secret } = message;
      this.isIn = true;
      if (secret) this.state.place = { room, peer, secret };
      for (const lane of ["steering", "carried"] as const)
        senders[lane] = reconnected(senders[lane], message[lane], now);
      if (secret) this.keep();
    } else if (message.type === "code") this.code = message.code;
    else if (message.type === "kept")
      senders[message.lane] = acknowledged(senders[message.lane], message.n, now);
    else if (message.type === "missing" || message.type === "wait")
      senders[message.lane] = delayed(senders[message.lane], now);
    else if (message.type === "record") {
      const { type, ...record } = message;
      this.got(receive(this.state.receiver, record.seq, now), record);
    } else if (message.type === "all") {
      this.hasAll = message.seq === this.state.receiver.last;
      this.got(upTo(this.state.receiver, message.seq, now));
    } else if (message.type === "no") this.no = message.why;
  }

  private got({ receiver, take, ask }: ReturnType<typeof receive>, record?: RoomRecord) {
    this.state.receiver = receiver;
    if (take && record) {
      this.state.journal.push(record);
      if (record.kind === "resume" || record.kind === "admit")
        this.state.senders.carried = released(this.state.senders.carried);
    }
    if (ask) this.send({ type: "ask", after: receiver.last });
  }
}
