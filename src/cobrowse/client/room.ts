import type { RoomRecord } from "../protocol/index.ts";
import { type Heard, readHeard, readSuggestion, type Suggestion, suggestionBounds } from "./suggestion.ts";

/** An agent in a room, by the name that the shop's token gives them. */
export type Person = { id: string; name: string; is: "asking" | "in" | "gone" };

/** Something that was said or suggested. `at` is the relay's clock, milliseconds. */
export type Said = { seq: number; from: string; at: number } & (
  | { by: "householder"; text: string }
  | { by: "agent"; suggestion: Suggestion; is: Heard["is"] | null }
);

/** What a room's log comes to for either end. What is carried is checked here, all but the journal. */
export type SharedRoom = {
  people: readonly Person[];
  isPaused: boolean;
  isEnded: boolean;
  said: readonly Said[];
  /** Bodies that carry the journal, in their order. */
  carried: readonly string[];
};

export const emptyRoom: SharedRoom = { people: [], isPaused: false, isEnded: false, said: [], carried: [] };

/** The room after one more entry of its log. What nobody may have sent, or nobody can read, changes nothing. */
export function withRecord(room: SharedRoom, { seq, from, at, kind, body }: RoomRecord): SharedRoom {
  const { people, said } = room;
  const become = (id: string, is: Person["is"]) => ({
    ...room,
    people: people.map((one) => (one.id === id ? { ...one, is } : one)),
  });
  if (kind === "joined")
    return { ...room, people: [...people, { id: from, name: body.slice(0, 60), is: "asking" }] };
  if (kind === "leave") return become(from, "gone");
  if (people.some(({ id }) => id === from)) {
    const suggestion = readSuggestion(kind, body);
    return suggestion
      ? { ...room, said: [...said, { seq, from, at, by: "agent", suggestion, is: null }] }
      : room;
  }
  switch (kind) {
    case "admit":
      return become(body, "in");
    case "turn-away":
      return become(body, "gone");
    case "pause":
    case "resume":
      return { ...room, isPaused: kind === "pause" };
    case "end":
      return { ...room, isEnded: true };
    case "line":
      return {
        ...room,
        said: [...said, { seq, from, at, by: "householder", text: body.slice(0, suggestionBounds.text) }],
      };
    case "entry":
      return { ...room, carried: [...room.carried, body] };
    case "heard": {
      const heard = readHeard(body);
      return {
        ...room,
        said: said.map((one) =>
          heard && one.by === "agent" && one.seq === heard.to ? { ...one, is: heard.is } : one,
        ),
      };
    }
    default:
      return room;
  }
}
