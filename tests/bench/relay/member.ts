import { WebSocket } from "ws";
import { tokenFor } from "../../cobrowse/relay/agents.ts";
import { origin } from "../../cobrowse/relay/sockets.ts";

/** Somebody in a room of a bench, at a relay or at the floor. */
export type Member = {
  say(): void;
  close(): void;
  /** How many events of others came, and after how many milliseconds each. */
  delays: number[];
  sent: number;
  kept: number;
  /** What a relay knows them by, at which port and from where. */
  place?: { room: string; peer: string; secret: string };
  port: number;
  address: string;
  last: number;
};

type Message = Record<string, unknown> & { type?: string };
const filling = "the answer that was given, and what it was given with, about as long as one is ".padEnd(
  120,
  ".",
);

/** Dials, from an address of its own as the proxy says. */
function dial(port: number, address: string): Promise<WebSocket> {
  const headers = { "x-forwarded-for": address };
  const socket = new WebSocket(`ws://127.0.0.1:${port}/rooms`, { origin, headers, perMessageDeflate: false });
  return new Promise((done, fail) => {
    socket.once("open", () => done(socket));
    socket.once("error", fail);
  });
}

function expectMessage(socket: WebSocket, is: (message: Message) => boolean): Promise<Message> {
  return new Promise((done, fail) => {
    const hear = (data: Buffer) => {
      const message = JSON.parse(`${data}`);
      if (message.type === "no") fail(new Error(`hung up: ${message.why}`));
      if (!is(message)) return;
      socket.off("message", hear);
      done(message);
    };
    socket.on("message", hear);
  });
}
const ofType = (type: string) => (message: Message) => message.type === type;

function memberOf(socket: WebSocket, kind: string, port: number, address = ""): Member {
  const member: Member = {
    ...{ delays: [], sent: 0, kept: 0, last: 0, port, address },
    say: () => {
      const body = JSON.stringify({ t: performance.now(), filling });
      socket.send(JSON.stringify({ type: "put", lane: "carried", n: ++member.sent, kind, body }));
    },
    close: () => socket.terminate(),
  };
  return member;
}

/** Counts what comes, apart from what oneself has said. */
function follow(socket: WebSocket, member: Member, isOwn: (message: Message) => boolean): void {
  socket.on("message", (data) => {
    const message = JSON.parse(`${data}`);
    if (message.type === "kept") member.kept = message.n;
    if (message.type === "record") member.last = message.seq;
    if (typeof message.body !== "string" || !message.body.startsWith("{") || isOwn(message)) return;
    member.delays.push(performance.now() - JSON.parse(message.body).t);
  });
}

/** Three who share a room of a relay. Neighbours are at different ports, where there are several. */
export async function meetAtRelay(ports: readonly number[], nth: number): Promise<Member[]> {
  const address = `10.${nth >> 16}.${(nth >> 8) & 255}.${nth & 255}`;
  const portOf = (place: number) => ports[(place + nth) % ports.length] ?? 0;
  const members: Member[] = [];
  const phone = await dial(portOf(0), address);
  const welcome = expectMessage(phone, ofType("welcome"));
  let code = expectMessage(phone, ofType("code"));
  phone.send(JSON.stringify({ type: "open", v: 1 }));
  const { room, secret } = await welcome;
  const add = (socket: WebSocket, peer: string, given: unknown) => {
    const kind = peer === "h" ? "entry" : "line";
    const member = memberOf(socket, kind, portOf(members.length), address);
    member.place = { room: `${room}`, peer, secret: `${given}` };
    follow(socket, member, ({ from }) => from === peer);
    members.push(member);
  };
  add(phone, "h", secret);
  for (const [place, steps] of [
    [1, 2],
    [2, 4],
  ] as const) {
    const desk = await dial(portOf(place), address);
    const inside = expectMessage(desk, ofType("welcome"));
    desk.send(JSON.stringify({ type: "join", v: 1, code: (await code).code, token: tokenFor() }));
    const { peer, secret: own } = await inside;
    const seen = expectMessage(desk, ({ kind, body }) => kind === "admit" && body === peer);
    add(desk, `${peer}`, own);
    code = expectMessage(phone, ofType("code"));
    steer(phone, steps, "admit", `${peer}`);
    await seen;
    if (place === 1) steer(phone, steps + 1, "code", "");
  }
  return members;
}

function steer(socket: WebSocket, n: number, kind: string, body: string): void {
  socket.send(JSON.stringify({ type: "put", lane: "steering", n, kind, body }));
}

/** Three at the floor. */
export async function meetAtFloor([port = 0]: readonly number[], nth: number): Promise<Member[]> {
  return Promise.all(
    ["h", "a1", "a2"].map(async (peer) => {
      const socket = await dial(port, "");
      const isIn = new Promise((done) => socket.once("message", done));
      socket.send(`room ${process.pid} ${nth}`);
      await isIn;
      const member = memberOf(socket, peer, port);
      follow(socket, member, ({ kind }) => kind === peer);
      return member;
    }),
  );
}

/** Comes back to a room, lacking its last entries; resolves with the milliseconds until all of them are there. */
export async function comeBack({ place, last, port, address }: Member, lacking: number): Promise<number> {
  const start = performance.now();
  const socket = await dial(port, address);
  let have = Math.max(0, last - lacking);
  socket.on("message", (data) => {
    const message = JSON.parse(`${data}`);
    if (message.type === "record" && message.seq === have + 1) have++;
  });
  const all = expectMessage(socket, ({ type, seq }) => type === "all" && have === seq && have >= last);
  socket.send(JSON.stringify({ type: "return", v: 1, ...place, after: have }));
  await all;
  const took = performance.now() - start;
  socket.terminate();
  return took;
}
