import {
  type Client,
  createClient,
  emptyRoom,
  type KeptEnd,
  type Means,
  type SharedRoom,
  type Suggestion,
  sendable,
  type Told,
  withRecord,
} from "../cobrowse/client/index.ts";
import type { First } from "../cobrowse/protocol/index.ts";
import type { Followed } from "./follow.ts";
import type { DeskGuide } from "./guide.ts";

/** What a room was told; `followed`: what is on their screen has changed; `heard`: something came from the relay. */
export type Change = Told | { type: "line"; isUp: boolean } | { type: "followed" | "heard" };

/** A room on the desk. */
export type DeskRoom = {
  key: string;
  shared: SharedRoom;
  /** Who the agent is in it; null before the relay has said. */
  me: string | null;
  isUp: boolean;
  isFull: boolean;
  /** Why there is nothing to come back to. */
  over: string | null;
  followed: Followed | null;
  /** Their screen can't be shown, as something of it did not come. */
  hasFault: boolean;
  /** What is being typed, by field. */
  drafts: Record<string, string>;
  /** Something came that was not looked at. */
  isNew: boolean;
  /** When the last of it came, by this device's clock. */
  heardAt: number;
};

export type RoomMeans = Pick<Means, "dial" | "now" | "after"> & {
  guide: DeskGuide;
  /** RFC 3339. */
  clock(): string;
  keep(end: KeptEnd): void;
  changed(room: DeskRoom, told: Change): void;
};

/** What an agent can do in a room: suggest, and leave. */
export type RoomActs = {
  room: DeskRoom;
  /** Sends a suggestion, now or as soon as that goes. @returns false where it is too long */
  suggest(suggestion: Suggestion): boolean;
  /** What was suggested and has no place in the room's log yet. */
  waiting: Client["unheard"];
  wake: Client["wake"];
  leave(): void;
  close: Client["close"];
};

/** Joins a room, or comes back to it. */
export function openRoom(key: string, first: First, kept: KeptEnd | null, means: RoomMeans): RoomActs {
  const room: DeskRoom = {
    key,
    shared: emptyRoom,
    me: kept?.place?.peer ?? null,
    isUp: false,
    isFull: false,
    over: null,
    followed: null,
    hasFault: false,
    drafts: {},
    isNew: false,
    heardAt: means.now(),
  };
  /** How much of the journal was followed, and whether it is being followed now. */
  let known = 0;
  let isFollowing = false;

  async function follow(): Promise<void> {
    if (isFollowing) return;
    isFollowing = true;
    while (known < room.shared.carried.length) {
      const { carried } = room.shared;
      known = carried.length;
      try {
        room.followed = (await means.guide.follow(carried, means.clock())) ?? room.followed;
        room.hasFault = false;
      } catch {
        room.hasFault = true;
      }
      means.changed(room, { type: "followed" });
    }
    isFollowing = false;
  }

  function hear(told: Told | { type: "line"; isUp: boolean }): void {
    if (told.type === "welcome") room.me = told.peer;
    if (told.type === "line") room.isUp = told.isUp;
    if (told.type === "full") room.isFull = true;
    if (told.type === "no" && !["busy", "flood", "silent"].includes(told.why)) room.over = told.why;
    if (told.type === "record") {
      room.shared = withRecord(room.shared, told.record);
      room.heardAt = means.now();
    }
    // All of it at once after a reload, and not a screen for each entry.
    if (told.type === "all" || (told.type === "record" && told.record.kind === "entry")) void follow();
    means.changed(room, told);
  }

  const client = createClient(first, kept, {
    dial: (on, to) =>
      means.dial(
        {
          ...on,
          text(text) {
            on.text(text);
            // What was acknowledged waits no longer, and nothing else says so.
            means.changed(room, { type: "heard" });
          },
        },
        to,
      ),
    now: means.now,
    after: means.after,
    keep: means.keep,
    told: hear,
  });
  return {
    room,
    suggest(suggestion) {
      const { kind, body } = sendable(suggestion);
      return client.say(kind, body);
    },
    waiting: client.unheard,
    wake: client.wake,
    leave() {
      client.say("leave", "", "steering");
      client.close();
    },
    close: client.close,
  };
}
