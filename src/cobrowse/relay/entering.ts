import { relayBounds as bounds, type First, type Why } from "../protocol/index.ts";
import { type Brakes, type Claims, judgeJoin, readCode, shownCode } from "../protocol/room/index.ts";
import type { Live, Rooms } from "./rooms.ts";
import type { Seals } from "./seals.ts";
import type { CodeOf, Store } from "./store.ts";

/** Somebody who was let into a room, by code or by secret; `secret` is new and said once. */
export type Entered = { live: Live; peer: string; after: number; secret?: string; code?: Code };
/** A code as it is shown, and when it ends. */
export type Code = { code: string; until: number };
/** Why somebody was not, and when they may try again. */
export type Refused = { why: Why; wait?: number };

/** What entering needs. */
export type Porch = {
  store: Store;
  rooms: Rooms;
  brakes: Brakes;
  seals: Seals;
  /** Who an agent is, or null where the token is none of the retailer's. */
  readToken(token: string, now: number): Claims | null;
  now(): number;
};

/** Lets somebody in by the first message of a connection, which alone has secrets. */
export async function enter(porch: Porch, first: First, address: string): Promise<Entered | Refused> {
  if (first.type === "open") return open(porch, address);
  if (first.type === "join") return join(porch, first, address);
  return comeBack(porch, first, address);
}

/** Makes a new code for a room; the one before is void, as the room's log says. */
export async function makeCode({ store, seals, now }: Porch, of: CodeOf): Promise<Code> {
  const [code, until] = [seals.newCode(), now() + bounds.codeLasts];
  await store.keepCode(seals.code(code), of, until);
  return { code: shownCode(code), until };
}

async function open(porch: Porch, address: string): Promise<Entered | Refused> {
  const { store, rooms, brakes, seals, now } = porch;
  const braked = brakes.tries(`open ${address}`, now());
  if (braked) return braked;
  if ([...rooms.all()].length >= bounds.rooms) return { why: "busy", wait: bounds.lockLasts };
  const [room, secret, peer] = [seals.newId(), seals.newId(), "h"];
  const draft = { from: peer, n: 1, kind: "opened", body: "", sealed: seals.secret(secret) };
  await store.append(room, draft, now());
  const code = await makeCode(porch, { room, seq: 1 });
  const live = await rooms.find(room);
  return live ? { live, peer, after: 0, secret, code } : { why: "unknown" };
}

async function join(
  porch: Porch,
  { code: typed, token }: First & { type: "join" },
  address: string,
): Promise<Entered | Refused> {
  const { store, rooms, brakes, seals, now } = porch;
  const braked = brakes.tries(address, now()) ?? brakes.held([address], now());
  if (braked) return braked;
  const claims = porch.readToken(token, now());
  if (!claims) {
    brakes.failed([address], now());
    return { why: "no-such-token" };
  }
  const names = [address, `agent ${claims.sub}`];
  const held = brakes.held(names, now());
  if (held) return held;
  const code = readCode(typed);
  const of = code && (await store.takeCode(seals.code(code), now()));
  const live = of && (await rooms.find(of.room));
  const entered = live
    ? await rooms.inTurn(live, () => newcomer(porch, live, of.seq, claims.name))
    : "no-such-code";
  if (entered === "no-such-code") brakes.failed(names, now());
  if (typeof entered === "string") return { why: entered };
  brakes.succeeded(names);
  return entered;
}

async function newcomer({ store, seals, now }: Porch, live: Live, codeSeq: number, name: string) {
  const verdict = judgeJoin(live.room, codeSeq, now());
  if (verdict !== "take") return verdict;
  const [peer, secret] = [`a${live.room.members.size}`, seals.newId()];
  const draft = { from: peer, n: 1, kind: "joined", body: name, sealed: seals.secret(secret) };
  await store.append(live.id, draft, now());
  return { live, peer, after: 0, secret };
}

async function comeBack(
  { rooms, brakes, seals, now }: Porch,
  { room, peer, secret, after }: First & { type: "return" },
  address: string,
): Promise<Entered | Refused> {
  const live = await rooms.find(room);
  const member = live?.room.members.get(peer);
  // A room that is over is no guess; a room that is there and another secret is one.
  if (!live || !member) return { why: "unknown" };
  if (!seals.isSame(member.sealed, seals.secret(secret))) {
    brakes.failed([address], now());
    return { why: "unknown" };
  }
  return { live, peer, after };
}
