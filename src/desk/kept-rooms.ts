import type { KeptEnd } from "../cobrowse/client/index.ts";

/** What a reload of the page comes back to: a place in a room, what waits there to be sent, and what is being typed. */
export type KeptRoom = { key: string; end: KeptEnd; drafts: Record<string, string> };

/** Where they lie in the tab's own storage. */
const name = "fridgeside-desk";

/** So many rooms are come back to, and so many characters read (judgement: far more than a person can follow). */
const [mostRooms, mostCharacters] = [20, 2_000_000];

export type KeptRooms = { read(): KeptRoom[]; write(rooms: readonly KeptRoom[]): void };

/** @param place the tab's storage; some browsers throw on the mere mention of it */
export function createKeptRooms(place: () => Storage): KeptRooms {
  return {
    read() {
      try {
        const text = place().getItem(name) ?? "[]";
        const rooms: unknown = text.length <= mostCharacters ? JSON.parse(text) : [];
        return Array.isArray(rooms) ? rooms.filter(isKept).slice(0, mostRooms) : [];
      } catch {
        return [];
      }
    },
    write(rooms) {
      try {
        place().setItem(name, JSON.stringify(rooms.slice(0, mostRooms)));
      } catch {
        // Denied or full: a reload has to join anew.
      }
    },
  };
}

/** Written by this very script, in this tab: what is looked at is whether it is whole. */
function isKept(given: unknown): given is KeptRoom {
  const { key, end, drafts } = (given ?? {}) as Partial<KeptRoom>;
  const isSender = (lane: "carried" | "steering") => Array.isArray(end?.senders?.[lane]?.queue);
  return (
    typeof key === "string" &&
    typeof end?.place?.secret === "string" &&
    isSender("carried") &&
    isSender("steering") &&
    typeof drafts === "object" &&
    drafts !== null
  );
}
