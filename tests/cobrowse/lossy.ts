import { pino } from "pino";
import type { Porch } from "../../src/cobrowse/relay/entering.ts";
import { createHub, type Hub } from "../../src/cobrowse/relay/hub.ts";
import type { Line } from "../../src/cobrowse/relay/line.ts";
import { createMetrics } from "../../src/cobrowse/relay/metrics.ts";
import { createRooms } from "../../src/cobrowse/relay/rooms.ts";
import { createSeals } from "../../src/cobrowse/relay/seals.ts";
import { type Change, createShelf, storeOn } from "../../src/cobrowse/relay/shelf.ts";
import type { Store } from "../../src/cobrowse/relay/store.ts";

/** A line between a device and the relay on which a test moves, drops and doubles what is on its way. */
export type LossyLine = {
  toRelay: string[];
  toDevice: string[];
  isUp: boolean;
  /** Whether too much of what was sent is still on its way. */
  isFull: boolean;
  /** Hands one of what is on its way to whoever it is for. */
  deliver(way: "toRelay" | "toDevice", place: number): void;
  /** The line goes down: what was on its way is lost. */
  drop(): void;
};

/** A relay whose disk and lines do what a test says. */
export type Lab = {
  clock: { now: number };
  dial(receive: (text: string) => void): LossyLine;
  /** The disk has done what it was given. */
  sync(): void;
  /** The relay is killed: what was not synced is gone, every line is down. A new one reads what is left. */
  kill(): void;
  hub(): Hub;
  /** What is on the disk. */
  kept(): Change[];
  /** Lets all promises that can be settled be settled. */
  settle(): Promise<void>;
};

/** What an agent's token says in these tests: the name, and whatever belongs to it. */
const readToken: Porch["readToken"] = (token) =>
  token ? { exp: 1e10, shop: "demo", sub: token, name: token } : null;

/** A relay on a disk that syncs when it is told to. */
export function createLab(): Lab {
  const clock = { now: 1_000_000 };
  const disk: Change[] = [];
  let lines: LossyLine[] = [];
  let pending: { change: Change | undefined; done: () => void }[] = [];
  let hub = start();

  function start(): Hub {
    const shelf = createShelf();
    for (const change of disk) shelf.make(structuredClone(change));
    const keep = (change?: Change) => new Promise<void>((done) => pending.push({ change, done }));
    const rest = { tidy: async () => {}, isWell: () => true, close: async () => {} };
    const store: Store = { ...storeOn(shelf, keep), ...rest };
    const now = () => clock.now;
    const porch: Porch = {
      store,
      rooms: createRooms(store, now, () => {}),
      seals: createSeals(new Uint8Array(32)),
      readToken,
      now,
    };
    return createHub(porch, createMetrics(), pino({ level: "silent" }));
  }

  return {
    clock,
    hub: () => hub,
    kept: () => disk,
    dial: (receive) => {
      const down = () => {
        Object.assign(line, { isUp: false, toRelay: [], toDevice: [] });
        connection.closed();
      };
      const relaysEnd: Line = {
        send: (text) => line.isUp && line.toDevice.push(text),
        unread: () => (line.isFull ? 1e6 : 0),
        close: () => void line.toDevice.push(""),
        cut: down,
      };
      const line: LossyLine = {
        toRelay: [],
        toDevice: [],
        isUp: true,
        isFull: false,
        deliver: (way, place) => {
          const [text] = line[way].splice(place, 1);
          if (text === undefined) return;
          if (way === "toRelay") connection.receive(text);
          else if (text) receive(text);
          else down();
        },
        drop: down,
      };
      const connection = hub.connect(relaysEnd, "192.0.2.1");
      lines.push(line);
      return line;
    },
    sync: () => {
      const all = pending;
      pending = [];
      for (const { change, done } of all) {
        // The medium has a copy, as a file has.
        if (change) disk.push(structuredClone(change));
        done();
      }
    },
    kill: () => {
      pending = [];
      const old = lines;
      lines = [];
      for (const line of old) line.drop();
      hub = start();
    },
    settle: () => new Promise((done) => setImmediate(done)),
  };
}
