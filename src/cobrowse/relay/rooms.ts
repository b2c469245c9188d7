import { relayBounds as bounds, type RoomRecord } from "../protocol/index.ts";
import {
  type Draft,
  endOf,
  laneOf,
  noRoom,
  type Placed,
  type Room,
  roomAfter,
  type Stored,
  visibleTo,
} from "../protocol/room/index.ts";
import { hangUp, type Line, tell } from "./line.ts";
import { type Store, StoreAway } from "./store.ts";

/** Somebody of a room at a line. */
export type Seat = {
  peer: string;
  line: Line;
  /** A higher number than any place that the same person had before, here or at another relay. */
  place: number;
  /** The last entry that was sent on this line. */
  sent: number;
  /** Whether it asked, and is told once it has all. */
  asks: boolean;
  /** Before this instant it is not sent the same again. */
  askFrom: number;
  /** Since when too much of what was sent is on its way, or null. */
  fullSince: number | null;
};

/** A room with whoever is there, and its log in memory. */
export type Live = {
  id: string;
  room: Room;
  records: Stored[];
  seats: Map<string, Seat>;
  turn: Promise<unknown>;
  /** When somebody last came to it or left it. */
  used: number;
};

/** What came of a draft; `no` where it was judged not to be kept. */
export type Kept<No> = Exclude<Placed, { type: "moved" | "lost" }> | { type: "no"; no: No };

/** The rooms of this relay. */
export type Rooms = {
  /** A room as the store has it, or null. */
  find(id: string): Promise<Live | null>;
  all(): Iterable<Live>;
  count(): number;
  /** Does something once all before it in this room is done: what is judged is what was kept. */
  inTurn<Done>(live: Live, work: () => Promise<Done>): Promise<Done>;
  /**
   * Keeps what `decide` makes of the room as it is; asked again where others have steered the room meanwhile.
   * @returns null where the room is lost
   */
  keep<No>(live: Live, decide: (room: Room) => Draft | { no: No }): Promise<Kept<No> | null>;
  /** Takes a place in a room whose log is caught up with. @returns null where the room is lost */
  place(live: Live, peer: string): Promise<number | null>;
  /** Gives somebody their place; an older line of theirs is replaced. */
  seat(live: Live, seat: Seat): void;
  /** They are there no longer. */
  leave(live: Live, seat: Seat): void;
  /** Sends somebody what they may see and have not been sent, as fast as they read. */
  pump(live: Live, seat: Seat): void;
  /** Ends what is over, cuts who does not read, forgets what has ended. */
  tick(): Promise<void>;
};

/** Milliseconds that a room nobody is in stays in memory where the store is shared. */
const idle = 30_000;
/** So often a draft is judged anew at most: each time somebody else has had something kept in between. */
const tries = 20;

/** @param onCut is told of each line that was cut */
export function createRooms(store: Store, now: () => number, onCut: () => void): Rooms {
  const rooms = new Map<string, Promise<Live | null>>();
  const lives = new Map<string, Live>();
  const load = async (id: string): Promise<Live | null> => {
    let live: Live | null = null;
    try {
      const records = await store.watch(id);
      const room = records.reduce(roomAfter, noRoom);
      const seats = new Map<string, Seat>();
      if (records.length) live = { id, room, records, seats, turn: Promise.resolve(), used: now() };
    } finally {
      if (live) lives.set(id, live);
      else rooms.delete(id);
    }
    return live;
  };
  const isOver = ({ room }: Live) => room.ended || now() >= endOf(room);
  const pump = (live: Live, seat: Seat) => {
    const { line, peer } = seat;
    const most = visibleTo(live.room, peer);
    while (seat.sent < most && line.unread() < bounds.unread) {
      const record = live.records[seat.sent++];
      if (record) line.send(said(record));
    }
    seat.fullSince = line.unread() < bounds.unread ? null : (seat.fullSince ?? now());
    if (seat.sent < most) return;
    if (seat.asks) tell(line, { type: "all", seq: most });
    seat.asks = false;
    const isGone = live.room.members.get(peer)?.gone;
    if (!isGone && !isOver(live)) return;
    live.seats.delete(peer);
    hangUp(line, isGone ? "gone" : "ended");
  };
  const drop = (live: Live, why: "ended" | "unknown") => {
    for (const { line } of live.seats.values()) hangUp(line, why);
    live.seats.clear();
    lives.delete(live.id);
    rooms.delete(live.id);
    store.unwatch(live.id);
  };
  const lose = (id: string) => {
    const live = lives.get(id);
    if (live) drop(live, "unknown");
  };
  store.follow({
    kept: (id, stored) => {
      const live = lives.get(id);
      if (!live || stored.seq !== live.records.length + 1) return;
      live.records.push(stored);
      live.room = roomAfter(live.room, stored);
      for (const seat of [...live.seats.values()]) pump(live, seat);
    },
    seated: (id, peer, place) => {
      const live = lives.get(id);
      const seat = live?.seats.get(peer);
      if (!live || !seat || seat.place >= place) return;
      live.seats.delete(peer);
      hangUp(seat.line, "replaced");
    },
    lost: lose,
  });
  const forget = async (live: Live) => {
    drop(live, "ended");
    await store.forget(live.id);
  };
  return {
    find: async (id) => {
      const found = rooms.get(id) ?? load(id);
      rooms.set(id, found);
      const live = await found;
      if (live) live.used = now();
      return live;
    },
    all: () => lives.values(),
    count: () => lives.size,
    inTurn: (live, work) => {
      const done = live.turn.then(work);
      live.turn = done.catch(() => {});
      return done;
    },
    keep: async (live, decide) => {
      for (let nth = 0; nth < tries; nth++) {
        if (lives.get(live.id) !== live) return null;
        const draft = decide(live.room);
        if ("no" in draft) return { type: "no", no: draft.no };
        const at = now();
        const seen = live.records.length;
        const until = laneOf(draft.kind) === "steering" ? forgottenFrom(live.room, seen, draft, at) : null;
        const placed = await store.append(live.id, draft, at, { seen, until });
        if (placed.type === "lost") {
          lose(live.id);
          return null;
        }
        if (placed.type !== "moved") return placed;
      }
      throw new StoreAway("Others were always faster");
    },
    place: async (live, peer) => {
      const place = await store.seat(live.id, peer);
      if (place === null) lose(live.id);
      return place;
    },
    seat: (live, seat) => {
      if (lives.get(live.id) !== live) return hangUp(seat.line, "unknown");
      const older = live.seats.get(seat.peer);
      if (older && older.place > seat.place) return hangUp(seat.line, "replaced");
      live.seats.set(seat.peer, seat);
      if (older && older.line !== seat.line) hangUp(older.line, "replaced");
    },
    leave: (live, seat) => {
      if (live.seats.get(seat.peer) !== seat) return;
      live.seats.delete(seat.peer);
      live.used = now();
    },
    pump,
    tick: async () => {
      for (const live of [...lives.values()]) {
        for (const seat of [...live.seats.values()]) {
          pump(live, seat);
          if (seat.fullSince === null || now() < seat.fullSince + bounds.slowFor) continue;
          seat.line.cut();
          onCut();
        }
        if (isOver(live) && now() >= overSince(live) + bounds.endLasts) await forget(live);
        else if (store.isShared && !live.seats.size && now() >= live.used + idle) drop(live, "ended");
      }
    },
  };
}

/** When a room will be forgotten with this draft as its next entry. */
function forgottenFrom(room: Room, seen: number, draft: Draft, at: number): number {
  const next = roomAfter(room, { seq: seen + 1, at, ...draft });
  return (next.ended ? at : endOf(next)) + bounds.endLasts;
}

function overSince({ room, records }: Live): number {
  return room.ended ? (records.at(-1)?.at ?? 0) : endOf(room);
}

/** The one that was said last, since everybody in a room is told the same. */
let lastSaid: { record: Stored | null; text: string } = { record: null, text: "" };

/** What of an entry is sent on: all but the digest of a secret. */
function said(record: Stored): string {
  if (lastSaid.record !== record) {
    const { seq, from, n, at, kind, body } = record;
    const plain: { type: "record" } & RoomRecord = { type: "record", seq, from, n, at, kind, body };
    lastSaid = { record, text: JSON.stringify(plain) };
  }
  return lastSaid.text;
}
