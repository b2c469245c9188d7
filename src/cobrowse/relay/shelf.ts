import {
  createBrakes,
  createRoomLog,
  type Draft,
  type Placed,
  place,
  type RoomLog,
  type Stored,
} from "../protocol/room/index.ts";
import type { CodeOf, Store } from "./store.ts";

/** A change of what is kept: a store's whole state is the changes in their order. */
export type Change =
  | { op: "append"; room: string; stored: Stored }
  | { op: "forget"; room: string }
  | { op: "code"; sealed: string; of: CodeOf; until: number }
  | { op: "used"; sealed: string };

/** What a store has in memory: every room and every code, and what was changed to come to it. */
export type Shelf = {
  place(room: string, draft: Draft, at: number): Placed;
  after(room: string, seq: number): Stored[];
  rooms(): string[];
  findCode(sealed: string, now: number): CodeOf | null;
  make(change: Change): void;
  /** The shortest changes that come to the same. */
  changes(now: number): Iterable<Change>;
};

/** An empty shelf. */
export function createShelf(): Shelf {
  const rooms = new Map<string, RoomLog>();
  const codes = new Map<string, { of: CodeOf; until: number }>();
  const placeIn = (room: string, draft: Draft, at: number) => {
    const log = rooms.get(room) ?? createRoomLog();
    const placed = place(log, draft, at);
    if (placed.type === "fresh") rooms.set(room, log);
    return placed;
  };
  return {
    place: placeIn,
    after: (room, seq) => rooms.get(room)?.records.slice(seq) ?? [],
    rooms: () => [...rooms.keys()],
    findCode: (sealed, now) => {
      const found = codes.get(sealed);
      return found && now < found.until ? found.of : null;
    },
    make: (change) => {
      if (change.op === "append") {
        const { seq, at, ...draft } = change.stored;
        const placed = placeIn(change.room, draft, at);
        if (placed.type !== "fresh" || placed.stored.seq !== seq)
          throw new Error("An entry is out of its order");
      } else if (change.op === "forget") rooms.delete(change.room);
      else if (change.op === "code") codes.set(change.sealed, { of: change.of, until: change.until });
      else codes.delete(change.sealed);
    },
    *changes(now) {
      for (const [sealed, { until }] of codes) if (until <= now) codes.delete(sealed);
      for (const [room, { records }] of rooms)
        for (const stored of records) yield { op: "append", room, stored };
      for (const [sealed, { of, until }] of codes) yield { op: "code", sealed, of, until };
    },
  };
}

/** What every store on a shelf does in the same way. */
export type OnShelf = Omit<Store, "tidy" | "isWell" | "close">;

/**
 * A store on a shelf, which one relay has for itself. `keep` resolves once a change is kept, in the order of the calls;
 * without a change it does so once all before it are.
 */
export function storeOn(shelf: Shelf, keep: (change?: Change) => Promise<void>): OnShelf {
  const followers = new Set<Parameters<Store["follow"]>[0]>();
  let places = 0;
  const change = (one: Change) => {
    shelf.make(one);
    return keep(one);
  };
  return {
    isShared: false,
    append: async (room, draft, at) => {
      const placed = shelf.place(room, draft, at);
      // What was said twice may be on its way to the medium for the first time.
      await keep(placed.type === "fresh" ? { op: "append", room, stored: placed.stored } : undefined);
      if (placed.type === "fresh") for (const follower of followers) follower.kept(room, placed.stored);
      return placed;
    },
    after: async (room, seq) => shelf.after(room, seq),
    watch: async (room) => shelf.after(room, 0),
    unwatch: () => {},
    catchUp: async () => {},
    seat: async () => ++places,
    rooms: async () => shelf.rooms(),
    keepCode: (sealed, of, until) => change({ op: "code", sealed, of, until }),
    takeCode: async (sealed, now) => {
      const of = shelf.findCode(sealed, now);
      // Out of memory at once: a second one who asks while it is written finds nothing.
      if (of) await change({ op: "used", sealed });
      return of;
    },
    brakes: createBrakes(),
    follow: (follower) => {
      followers.add(follower);
      return () => void followers.delete(follower);
    },
    forget: (room) => change({ op: "forget", room }),
  };
}
