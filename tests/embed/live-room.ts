import { readSuggestion } from "../../src/cobrowse/client/index.ts";
import type { FromRelay, Put } from "../../src/cobrowse/protocol/index.ts";
import { openLive } from "../../src/embed/live.ts";
import type { LivePlace } from "../../src/embed/live-place.ts";
import { createJournal, type Journal } from "../../src/session/index.ts";
import type { View } from "../../src/turn/index.ts";

/** Where a room is kept; a page that is loaded again has the same. */
export const createPlace = (): LivePlace & { kept: string | null } => {
  const place = {
    kept: null as string | null,
    read: () => place.kept,
    write: (text: string | null) => {
      place.kept = text;
    },
  };
  return place;
};

/** A phone's end of a room at a relay that does what a test says, on a clock that stands. */
export function openRoom(place = createPlace(), log: FromRelay[] = []) {
  const state = {
    view: null as View | null,
    journal: createJournal("2026-01-01T09:00:00Z") as Journal,
    now: 1_000_000,
  };
  const events: string[] = [];
  let on = { up: () => {}, text: (_: string) => {}, down: () => {} };
  let timer = () => {};
  const sent: (Put | { type: string })[] = [];
  const live = openLive({
    relay: "wss://relay.example/rooms",
    place,
    journal: () => state.journal,
    view: () => state.view,
    texts: (key) => key,
    emit: (name, by, why) => void events.push(`${name} by ${by}: ${why}`),
    changed: () => {},
    now: () => state.now,
    after: (_, work) => {
      timer = work;
      return () => {};
    },
    dial: (_, next) => {
      on = next;
      return { send: (text) => void sent.push(JSON.parse(text)), close: () => {} };
    },
  });
  const hear = (message: object) => on.text(JSON.stringify(message));
  let seq = 0;
  /** One entry of the room's log comes. */
  const record = (from: string, kind: string, body = "") =>
    hear({ type: "record", seq: ++seq, from, n: seq, at: 1, kind, body });
  on.up();
  hear({ type: "welcome", room: "r", peer: "h", secret: "s", carried: 0, steering: 1, endsIn: 7_200_000 });
  for (const message of log) {
    if (message.type === "record") seq = message.seq;
    hear(message);
  }
  return {
    ...{ live, state, events, sent, hear, record, place },
    tick: () => timer(),
    room: () => live.room(),
    /** What of a lane was sent, by kind. */
    puts: (kind: string) => sent.flatMap((one) => ("kind" in one && one.kind === kind ? one : [])),
    /** Somebody has joined and was let in, and all of the log is here. */
    letIn() {
      record("h", "opened");
      record("a1", "joined", "Ash");
      record("h", "admit", "a1");
      hear({ type: "all", seq });
    },
    suggest(kind: string, body: object) {
      if (!readSuggestion(kind, JSON.stringify(body))) throw new Error("No agent may send that");
      record("a1", kind, JSON.stringify(body));
    },
  };
}
