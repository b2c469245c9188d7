import type { KeptEnd, Means, Suggestion } from "../cobrowse/client/index.ts";
import { version } from "../cobrowse/protocol/index.ts";
import { roomLineOf, sorted } from "./board/index.ts";
import { codeIn } from "./code.ts";
import type { DeskGuide } from "./guide.ts";
import type { KeptRooms } from "./kept-rooms.ts";
import { newsOf } from "./news.ts";
import { openRoom, type RoomActs } from "./room.ts";

/** Milliseconds until it is said that no relay answers. */
const silence = 8000;

/** Somebody is joining by a code: `why` they were not let in, as a key of the desk's texts. */
export type Joining = { is: "idle" | "joining" | "slow" | "refused"; why: string; minutes: number };

/** Which of the three columns a narrow desk shows. */
export type Column = "list" | "phone" | "known";

export type DeskMeans = Pick<Means, "dial" | "now" | "after"> & {
  guide: DeskGuide;
  kept: KeptRooms;
  /** The agent's token; null where the shop gives none. */
  token(): Promise<string | null>;
  /** RFC 3339. */
  clock(): string;
  /** A name that no room on the desk has. */
  newKey(): string;
  draw(): void;
};

export type DeskRooms = ReturnType<typeof createDeskRooms>;

/** All rooms that an agent is in, which of them is looked at, and whoever joins another one. Comes back to those of the page before. */
export function createDeskRooms(means: DeskMeans) {
  const { guide, kept, draw, now } = means;
  const rooms = new Map<string, RoomActs>();
  const ends = new Map<string, KeptEnd>();
  let current: string | null = null;
  let column: Column = "list";
  let joining: Joining = { is: "idle", why: "", minutes: 0 };
  let news = "";
  /** The room that is being joined, and what ends the wait for its relay. */
  let coming: { key: string; room: RoomActs | null; cancel(): void } | null = null;

  function save(): void {
    kept.write(
      [...rooms].flatMap(([key, { room }]) => {
        const end = ends.get(key);
        return end?.place && !room.over ? [{ key, end, drafts: room.drafts }] : [];
      }),
    );
  }

  function open(key: string, code: string, token: string, end: KeptEnd | null): RoomActs {
    return openRoom(key, { type: "join", v: version, code, token }, end, {
      ...means,
      keep(end) {
        ends.set(key, end);
        save();
      },
      changed(room, told) {
        const isComing = coming?.key === key;
        if (isComing && told.type === "welcome") arrive();
        else if (isComing && told.type === "no") refuse(told.why, told.wait);
        const said = newsOf(room, told, guide.texts);
        if (said) news = said;
        if (told.type === "record" && key !== current) room.isNew = true;
        if (room.over || room.shared.isEnded) save();
        draw();
      },
    });
  }

  /** The relay has taken the code. It may have done so before `openRoom` has given the room. */
  function arrive(): void {
    const { key, room, cancel } = coming ?? {};
    if (!key || !room) return;
    cancel?.();
    rooms.set(key, room);
    coming = null;
    joining = { is: "idle", why: "", minutes: 0 };
    [current, column] = [key, "phone"];
    news = guide.texts("desk.news.joined");
    save();
  }

  function refuse(why: string, wait = 0): void {
    coming?.cancel();
    coming?.room?.close();
    coming = null;
    joining = { is: "refused", why, minutes: Math.ceil(wait / 60_000) };
  }

  for (const { key, end, drafts } of kept.read()) {
    ends.set(key, end);
    const room = open(key, "", "", end);
    room.room.drafts = drafts;
    rooms.set(key, room);
  }

  const line = ({ room }: RoomActs) => {
    const { shared, me, followed, over } = room;
    const { session = null, view = null } = followed ?? {};
    return roomLineOf({ room: shared, me, session, view, over, now: now() }, guide.texts);
  };

  return {
    texts: guide.texts,
    state: () => ({
      rooms: sorted([...rooms.values()].map((acts) => ({ acts, line: line(acts) }))),
      current: current === null ? null : (rooms.get(current) ?? null),
      column,
      joining,
      news,
      now: now(),
    }),
    /** Joins by a code as it was typed. */
    async join(typed: string): Promise<void> {
      if (coming) return;
      const code = codeIn(typed);
      if (!code) {
        joining = { is: "refused", why: "shape", minutes: 0 };
        return draw();
      }
      const key = means.newKey();
      const mine = { key, room: null as RoomActs | null, cancel: () => {} };
      coming = mine;
      joining = { is: "joining", why: "", minutes: 0 };
      draw();
      const token = await means.token();
      if (coming !== mine) return;
      if (!token) refuse("no-token");
      else {
        mine.cancel = means.after(silence, () => {
          joining = { ...joining, is: "slow" };
          draw();
        });
        mine.room = open(key, code, token, null);
      }
      draw();
    },
    cancelJoin(): void {
      coming?.cancel();
      coming?.room?.close();
      coming = null;
      joining = { is: "idle", why: "", minutes: 0 };
      draw();
    },
    look(key: string): void {
      const found = rooms.get(key);
      if (!found) return;
      found.room.isNew = false;
      if (current !== key || column === "list") column = "phone";
      current = key;
      draw();
    },
    show(next: Column): void {
      column = next;
      draw();
    },
    suggest(key: string, suggestion: Suggestion): boolean {
      const isTaken = rooms.get(key)?.suggest(suggestion) ?? false;
      draw();
      return isTaken;
    },
    /** Keeps what is being typed: it outlives a reload, and a look at another room. */
    draft(key: string, name: string, text: string): void {
      const { room } = rooms.get(key) ?? {};
      if (!room) return;
      room.drafts = { ...room.drafts, [name]: text };
      save();
      draw();
    },
    /** Leaves a room, or takes one that is over off the list. */
    leave(key: string): void {
      const acts = rooms.get(key);
      if (!acts) return;
      if (acts.room.over) acts.close();
      else acts.leave();
      rooms.delete(key);
      ends.delete(key);
      if (current === key) [current, column] = [null, "list"];
      save();
      draw();
    },
    /** There may be a connection again. */
    wake(): void {
      for (const { wake } of rooms.values()) wake();
      coming?.room?.wake();
    },
    /** Hangs up everywhere; the page after comes back. */
    close(): void {
      coming?.cancel();
      coming?.room?.close();
      for (const { close } of rooms.values()) close();
    },
  };
}
