import { relayBounds as bounds, type First, type Why } from "../protocol/index.ts";
import { type Claims, judgeJoin, readCode, shownCode } from "../protocol/room/index.ts";
import type { Live, Rooms } from "./rooms.ts";
import type { Seals } from "./seals.ts";
import type { CodeOf, Store } from "./store.ts";

/** Somebody who was let into a room, by code or by secret; `secret` is new and said once. */
export type Entered = Arrived & { place: number };
type Arrived = { live: Live; peer: string; after: number; secret?: string; code?: Code };
/** A code as it is shown, and when it ends. */
export type Code = { code: string; until: number };
/** Why somebody was not, and when they may try again. */
export type Refused = { why: Why; wait?: number };

/** What entering needs. */
export type Porch = {
  store: Store;
  rooms: Rooms;
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
  const { store, rooms, seals, now } = porch;
  const braked = await store.brakes.tries(`open ${address}`, now());
  if (braked) return braked;
  if (rooms.count() >= bounds.rooms) return { why: "busy", wait: bounds.lockLasts };
  const [room, secret, peer] = [seals.newId(), seals.newId(), "h"];
  const draft = { from: peer, n: 1, kind: "opened", body: "", sealed: seals.secret(secret) };
  const at = now();
  await store.append(room, draft, at, { seen: 0, until: at + bounds.codeLasts + bounds.endLasts });
  const code = await makeCode(porch, { room, seq: 1 });
  const live = await rooms.find(room);
  return live ? sitDown(porch, { live, peer, after: 0, secret, code }) : { why: "unknown" };
}

async function join(
  porch: Porch,
  { code: typed, token }: First & { type: "join" },
  address: string,
): Promise<Entered | Refused> {
  const { store, rooms, seals, now } = porch;
  const { brakes } = store;
  const braked = (await brakes.tries(address, now())) ?? (await brakes.held([address], now()));
  if (braked) return braked;
  const claims = porch.readToken(token, now());
  if (!claims) {
    await brakes.failed([address], now());
    return { why: "no-such-token" };
  }
  const names = [address, `agent ${claims.sub}`];
  const held = await brakes.held(names, now());
  if (held) return held;
  const code = readCode(typed);
  const of = code && (await store.takeCode(seals.code(code), now()));
  const live = of && (await rooms.find(of.room));
  const entered = live
    ? await rooms.inTurn(live, () => newcomer(porch, live, of.seq, claims.name))
    : "no-such-code";
  if (entered === "no-such-code") await brakes.failed(names, now());
  if (typeof entered === "string") return { why: entered };
  await brakes.succeeded(names);
  return sitDown(porch, entered);
}

async function newcomer(
  { rooms, seals, now }: Porch,
  live: Live,
  codeSeq: number,
  name: string,
): Promise<Arrived | "no-such-code" | "full" | "unknown"> {
  const secret = seals.newId();
  const sealed = seals.secret(secret);
  let peer = "";
  const kept = await rooms.keep(live, (room) => {
    const verdict = judgeJoin(room, codeSeq, now());
    peer = `a${room.members.size}`;
    return verdict === "take" ? { from: peer, n: 1, kind: "joined", body: name, sealed } : { no: verdict };
  });
  if (kept?.type === "no") return kept.no;
  if (!kept) return "unknown";
  // Where another has come in by this name in the same moment, by a newer code, the name is theirs.
  const isOwn = "stored" in kept && kept.stored.sealed === sealed;
  return isOwn ? { live, peer, after: 0, secret } : "no-such-code";
}

async function comeBack(
  porch: Porch,
  { room, peer, secret, after }: First & { type: "return" },
  address: string,
): Promise<Entered | Refused> {
  const { store, rooms, seals, now } = porch;
  const live = await rooms.find(room);
  // They may have come in at another relay a moment ago.
  if (live && !live.room.members.has(peer)) await store.catchUp(room);
  const member = live?.room.members.get(peer);
  // A room that is over is no guess; a room that is there and another secret is one.
  if (!live || !member) return { why: "unknown" };
  if (!seals.isSame(member.sealed, seals.secret(secret))) {
    await store.brakes.failed([address], now());
    return { why: "unknown" };
  }
  return sitDown(porch, { live, peer, after });
}

/** Whoever has more of a room than the store has is no longer in the same room. */
async function sitDown({ rooms }: Porch, arrived: Arrived): Promise<Entered | Refused> {
  const { live, peer, after } = arrived;
  const place = await rooms.place(live, peer);
  return place === null || after > live.records.length ? { why: "unknown" } : { ...arrived, place };
}
