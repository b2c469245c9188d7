import { relayBounds as bounds, type RoomRecord } from "../protocol/index.ts";
import { endOf, noRoom, type Room, roomAfter, type Stored, visibleTo } from "../protocol/room/index.ts";
import { hangUp, type Line, tell } from "./line.ts";
import type { Store } from "./store.ts";

/** Somebody of a room at a line. */
export type Seat = {
  peer: string;
  line: Line;
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
};

/** The rooms of this relay. */
export type Rooms = {
  /** A room as the store has it, or null. */
  find(id: string): Promise<Live | null>;
  all(): Iterable<Live>;
  /** Does something once all before it in this room is done: what is judged is what was kept. */
  inTurn<Done>(live: Live, work: () => Promise<Done>): Promise<Done>;
  /** Gives somebody their place; an older line of theirs is replaced. */
  seat(live: Live, seat: Seat): void;
  /** Sends somebody what they may see and have not been sent, as fast as they read. */
  pump(live: Live, seat: Seat): void;
  /** Ends what is over, cuts who does not read, forgets what has ended. */
  tick(): Promise<void>;
};

/** @param onCut is told of each line that was cut */
export function createRooms(store: Store, now: () => number, onCut: () => void): Rooms {
  const rooms = new Map<string, Promise<Live | null>>();
  const lives = new Map<string, Live>();
  const load = async (id: string): Promise<Live | null> => {
    const records = await store.after(id, 0);
    if (!records.length) {
      rooms.delete(id);
      return null;
    }
    const room = records.reduce(roomAfter, noRoom);
    const live: Live = { id, room, records, seats: new Map(), turn: Promise.resolve() };
    lives.set(id, live);
    return live;
  };
  const isOver = ({ room }: Live) => room.ended || now() >= endOf(room);
  const pump = (live: Live, seat: Seat) => {
    const { line, peer } = seat;
    const most = visibleTo(live.room, peer);
    while (seat.sent < most && line.unread() < bounds.unread) {
      const record = live.records[seat.sent++];
      if (record) tell(line, { type: "record", ...plain(record) });
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
  store.follow((id, stored) => {
    const live = lives.get(id);
    if (!live || stored.seq !== live.records.length + 1) return;
    live.records.push(stored);
    live.room = roomAfter(live.room, stored);
    for (const seat of [...live.seats.values()]) pump(live, seat);
  });
  const forget = async (live: Live) => {
    for (const { line } of live.seats.values()) hangUp(line, "ended");
    lives.delete(live.id);
    rooms.delete(live.id);
    await store.forget(live.id);
  };
  return {
    find: (id) => {
      const found = rooms.get(id) ?? load(id);
      rooms.set(id, found);
      return found;
    },
    all: () => lives.values(),
    inTurn: (live, work) => {
      const done = live.turn.then(work);
      live.turn = done.catch(() => {});
      return done;
    },
    seat: (live, seat) => {
      const older = live.seats.get(seat.peer);
      live.seats.set(seat.peer, seat);
      if (older && older.line !== seat.line) hangUp(older.line, "replaced");
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
      }
    },
  };
}

function overSince({ room, records }: Live): number {
  return room.ended ? (records.at(-1)?.at ?? 0) : endOf(room);
}

/** What of an entry is sent on: all but the digest of a secret. */
function plain({ seq, from, n, at, kind, body }: Stored): RoomRecord {
  return { seq, from, n, at, kind, body };
}
