import { WebSocket } from "ws";
import type { FromRelay } from "../../../src/cobrowse/protocol/index.ts";
import {
  createLog,
  createMemoryStore,
  createRelay,
  type Relay,
  type RelayOptions,
  type Store,
} from "../../../src/cobrowse/relay/index.ts";
import { key, shop, tokenFor } from "./agents.ts";

export const origin = "https://shop.example";

/** A relay on a free port of this machine, and its log. */
export type Running = { relay: Relay; port: number; watchPort: number; logged: string[]; store: Store };

/** Starts one. */
export async function startRelay(options: Partial<RelayOptions> = {}): Promise<Running> {
  const logged: string[] = [];
  const store = options.store ?? createMemoryStore();
  const relay = await createRelay({
    ...{ store, key, shop, origins: [origin], proxies: 1, now: Date.now, chance: () => 0.5 },
    log: createLog({ write: (line) => void logged.push(line) }, "trace"),
    ...options,
  });
  const host = "127.0.0.1";
  const ports = await relay.listen({ host, port: 0, watchHost: host, watchPort: 0 });
  return { relay, ...ports, logged, store };
}

/** A connection that keeps all that it hears until somebody asks for it. */
export type Caller = {
  socket: WebSocket;
  say(message: object | string): void;
  /** The next message of this type; those before it are passed over. */
  hear<Type extends FromRelay["type"]>(type: Type): Promise<FromRelay & { type: Type }>;
  /** The close code, once the relay has hung up. */
  closed: Promise<number>;
  /** All that came, as text. */
  heard: string[];
};

/**
 * Dials a relay.
 * @param from the address that the proxy in front says the connection is from; each test has some of its own
 */
export async function call(
  { port }: Running,
  from = "192.0.2.1",
  own: object = {},
  path = "/rooms",
): Promise<Caller> {
  const headers = { "x-forwarded-for": from };
  const socket = new WebSocket(`ws://127.0.0.1:${port}${path}`, { origin, headers, ...own });
  const heard: string[] = [];
  let read = 0;
  let wake = () => {};
  let isClosed = false;
  socket.on("message", (data) => {
    heard.push(data.toString());
    wake();
  });
  const closed = new Promise<number>((done) =>
    socket.on("close", (code) => {
      isClosed = true;
      done(code);
      wake();
    }),
  );
  await new Promise((done, fail) => {
    socket.once("open", done);
    socket.once("error", fail);
  });
  socket.on("error", () => {});
  return {
    socket,
    heard,
    closed,
    say: (message) => socket.send(typeof message === "string" ? message : JSON.stringify(message)),
    hear: async (type) => {
      for (;;) {
        while (read < heard.length) {
          const message = JSON.parse(heard[read++] ?? "");
          if (message.type === type) return message;
        }
        if (isClosed) throw new Error(`Hung up before "${type}" came; heard ${heard.slice(-3).join(" ")}`);
        await new Promise<void>((done) => {
          wake = done;
        });
      }
    },
  };
}

/** Somebody in a room, with what they need to come back. */
export type Inside = Caller & {
  room: string;
  peer: string;
  secret: string;
  put: (kind: string, body: string, n?: number) => void;
};

function inside(caller: Caller, welcome: FromRelay & { type: "welcome" }): Inside {
  const lanes = { carried: welcome.carried, steering: welcome.steering };
  return {
    ...caller,
    room: welcome.room,
    peer: welcome.peer,
    secret: welcome.secret ?? "",
    put: (kind, body, n) => {
      const lane = /^(admit|turn-away|pause|resume|code|end|leave)$/.test(kind) ? "steering" : "carried";
      caller.say({ type: "put", lane, n: n ?? ++lanes[lane], kind, body });
    },
  };
}

/** A householder in a new room, and the code. */
export async function openRoom(running: Running, from?: string): Promise<Inside & { code: string }> {
  const caller = await call(running, from);
  caller.say({ type: "open", v: 1 });
  const welcome = await caller.hear("welcome");
  const { code } = await caller.hear("code");
  return { ...inside(caller, welcome), code };
}

/** An agent who has joined by a code and waits to be let in. */
export async function joinRoom(
  running: Running,
  code: string,
  from?: string,
  token = tokenFor(),
): Promise<Inside> {
  const caller = await call(running, from);
  caller.say({ type: "join", v: 1, code, token });
  return inside(caller, await caller.hear("welcome"));
}

/** A householder and an agent whom they have let in. */
export async function meet(running: Running, from?: string) {
  const phone = await openRoom(running, from);
  const desk = await joinRoom(running, phone.code, from);
  phone.put("admit", desk.peer);
  await desk.hear("record");
  return { phone, desk };
}

/** Takes somebody's line down and has them come back. */
export async function comeBack(
  running: Running,
  { room, peer, secret }: Inside,
  after: number,
): Promise<Inside> {
  const caller = await call(running);
  caller.say({ type: "return", v: 1, room, peer, secret, after });
  return { ...inside(caller, await caller.hear("welcome")), secret };
}

/** The next records, so many. */
export async function records(caller: Caller, count: number) {
  const all: (FromRelay & { type: "record" })[] = [];
  while (all.length < count) all.push(await caller.hear("record"));
  return all;
}
