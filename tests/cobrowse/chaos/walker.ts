import { WebSocket } from "ws";
import {
  acknowledged,
  createReceiver,
  createSender,
  delayed,
  due,
  enqueue,
  type Lane,
  type Receiver,
  type RoomRecord,
  readFromRelay,
  receive,
  reconnected,
  released,
  type Sender,
  upTo,
} from "../../../src/cobrowse/protocol/index.ts";
import { origin } from "../relay/sockets.ts";

/** What a device comes back with. */
export type Place = { room: string; peer: string; secret: string };

/** Milliseconds: to a welcome, to an answer of what was asked, between two questions, to the first new try and to any. */
const patience = { welcome: 4000, answer: 5000, ask: 3000, soon: 100, late: 1000 };

/**
 * A phone or a desk on real lines, by the protocol's own sender and receiver. It dials any of the relays, and anew
 * whenever its line is gone or silent. A test calls `act` again and again.
 */
export class Walker {
  journal: RoomRecord[] = [];
  said: string[] = [];
  /** Why a relay has hung up for good, where it has. */
  over = "";
  receiver: Receiver = createReceiver();
  private senders: Record<Lane, Sender>;
  private socket: WebSocket | null = null;
  private isIn = false;
  private hears = 0;
  private asked = 0;
  private dialFrom = 0;
  private failures = 0;
  readonly place: Place;
  readonly address: string;
  readonly ports: () => readonly number[];

  constructor(place: Place, address: string, ports: () => readonly number[], now: number) {
    [this.place, this.address, this.ports] = [place, address, ports];
    this.senders = { carried: createSender("carried", now), steering: createSender("steering", now) };
  }

  say(body: string) {
    this.said.push(body);
    this.enqueue("carried", this.place.peer === "h" ? "entry" : "line", body);
  }

  steer(kind: string) {
    this.enqueue("steering", kind, "");
  }

  /** What waits for its acknowledgement. */
  get waiting(): number {
    return this.senders.carried.queue.length + this.senders.steering.queue.length;
  }

  /** The line is gone, as in a lift. */
  cut() {
    this.socket?.terminate();
    this.socket = null;
    this.isIn = false;
  }

  act(now: number) {
    if (this.over) return;
    if (!this.socket) {
      if (now >= this.dialFrom) this.dial(now);
      return;
    }
    if (now > this.hears + (this.isIn ? patience.ask + patience.answer : patience.welcome))
      return this.lose(now);
    if (!this.isIn) return;
    for (const lane of ["steering", "carried"] as const) {
      const [sender, puts] = due(this.senders[lane], now);
      this.senders[lane] = sender;
      for (const put of puts) this.send(put);
    }
    if (now > this.asked + patience.ask) this.ask(now);
  }

  private enqueue(lane: Lane, kind: string, body: string) {
    this.senders[lane] = enqueue(this.senders[lane], kind, body);
  }

  private ask(now: number) {
    this.asked = now;
    this.send({ type: "ask", after: this.receiver.last });
  }

  private send(message: object) {
    if (this.socket?.readyState === WebSocket.OPEN) this.socket.send(JSON.stringify(message));
  }

  private lose(now: number) {
    this.cut();
    this.dialFrom = now + Math.min(patience.late, patience.soon * 2 ** this.failures++);
  }

  private dial(now: number) {
    const ports = this.ports();
    const port = ports[Math.floor(Math.random() * ports.length)];
    const headers = { "x-forwarded-for": this.address };
    const socket = new WebSocket(`ws://127.0.0.1:${port}/rooms`, {
      origin,
      headers,
      perMessageDeflate: false,
    });
    [this.socket, this.hears] = [socket, now];
    const isOurs = () => this.socket === socket;
    socket.on("open", () => {
      if (isOurs()) this.send({ type: "return", v: 1, ...this.place, after: this.receiver.last });
    });
    socket.on("message", (data) => {
      if (isOurs()) this.hear(`${data}`, Date.now());
    });
    socket.on("close", () => {
      if (isOurs()) this.lose(Date.now());
    });
    socket.on("error", () => {});
  }

  private hear(text: string, now: number) {
    const message = readFromRelay(text);
    if (!message) throw new Error(`The relay said what is none of the protocol: ${text}`);
    this.hears = now;
    const { senders } = this;
    if (message.type === "welcome") {
      [this.isIn, this.failures, this.asked] = [true, 0, now];
      for (const lane of ["steering", "carried"] as const)
        senders[lane] = reconnected(senders[lane], message[lane], now);
    } else if (message.type === "kept")
      senders[message.lane] = acknowledged(senders[message.lane], message.n, now);
    else if (message.type === "missing" || message.type === "wait")
      senders[message.lane] = delayed(senders[message.lane], now);
    else if (message.type === "record") {
      const { type, ...record } = message;
      const got = receive(this.receiver, record.seq, now);
      this.receiver = got.receiver;
      if (got.take) this.journal.push(record);
      if (got.take && record.kind === "resume") senders.carried = released(senders.carried);
      if (got.ask) this.ask(now);
    } else if (message.type === "all") {
      const got = upTo(this.receiver, message.seq, now);
      this.receiver = got.receiver;
      if (got.ask) this.ask(now);
    } else if (
      message.type === "no" &&
      /unknown|ended|gone|malformed|not-yours|number-taken/.test(message.why)
    )
      this.over = message.why;
  }
}
