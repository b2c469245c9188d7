import { describe, expect, test } from "vitest";
import { journalIn } from "../../src/cobrowse/client/index.ts";
import { append } from "../../src/session/index.ts";
import { quietAnswers, turnWith, viewOf } from "../panel/gallery/turns.ts";
import { createPlace, openRoom } from "./live-room.ts";

const question = viewOf(
  turnWith({ turn: "ice-bin.look", answers: [{ id: "fine", text: "Loose", role: "own" }, ...quietAnswers] }),
);

type Room = ReturnType<typeof openRoom>;

/** One more answer is kept on this phone, and shown. */
function answers({ state, live }: Room, answer = "fine") {
  const { entries } = state.journal;
  const event = { type: "answered" as const, turn: "ice-bin.look", answer };
  state.journal = append(state.journal, { id: `${entries.length}`, at: "2026-01-01T09:00:00Z", event });
  live.look();
}

/** The journal that an agent has by now. */
const seen = ({ puts }: Room) => journalIn(puts("entry").map(({ body }) => body));

describe("a room on the phone", () => {
  test("shows its code until somebody has joined by it", () => {
    const { room, hear, record, state } = openRoom();
    hear({ type: "code", code: "J971-4TD6", endsIn: 600_000 });
    expect(room()).toMatchObject({
      is: "open",
      isUp: true,
      code: { text: "J971-4TD6", until: state.now + 600_000 },
    });
    record("a1", "joined", "Ash");
    expect(room()).toMatchObject({ code: null, asking: [{ id: "a1", name: "Ash" }], inside: [] });
  });

  test("shares nothing before somebody was let in and the whole log is here, and then the journal", () => {
    const here = openRoom();
    answers(here);
    here.record("h", "opened");
    here.record("a1", "joined", "Ash");
    here.hear({ type: "all", seq: 2 });
    here.live.letIn("a1");
    expect(here.puts("admit")).toMatchObject([{ lane: "steering", body: "a1" }]);
    expect(here.puts("entry")).toEqual([]);
    here.record("h", "admit", "a1");
    expect(seen(here)).toEqual(here.state.journal);
    answers(here, "full");
    expect(seen(here)).toEqual(here.state.journal);
    expect(here.puts("entry")).toHaveLength(2);
  });

  test("shares nothing that is answered while it is paused, and all of it afterwards", () => {
    const here = openRoom();
    here.letIn();
    const before = here.sent.length;
    here.live.pause(true);
    answers(here);
    expect(here.live.write("Hello")).toBe(false);
    expect(here.sent.slice(before)).toMatchObject([{ kind: "pause" }]);
    here.record("h", "pause");
    expect(here.room()?.isPaused).toBe(true);
    here.live.pause(false);
    here.hear({ type: "kept", lane: "steering", n: 3, seq: 4 });
    here.record("h", "resume");
    expect(seen(here)).toEqual(here.state.journal);
  });

  test("shares nothing once whoever was in has left", () => {
    const here = openRoom();
    here.letIn();
    here.record("a1", "leave");
    const before = here.puts("entry").length;
    answers(here);
    expect(here.puts("entry")).toHaveLength(before);
    expect(here.room()).toMatchObject({ inside: [], left: "Ash" });
    expect(here.events).toEqual(["joined by agent: let-in", "left by agent: left"]);
  });

  test("shares a new start and what follows", () => {
    const here = openRoom();
    here.letIn();
    answers(here);
    here.state.journal = append(here.state.journal, {
      id: "again",
      at: "2026-01-01T09:05:00Z",
      event: { type: "started-again" },
    });
    answers(here);
    expect(seen(here)).toEqual(here.state.journal);
  });

  test("shows a line once, whether its place in the log or its receipt comes first", () => {
    const here = openRoom();
    here.letIn();
    expect(here.live.write("They are loose")).toBe(true);
    expect(here.room()?.lines.map(({ text }) => text)).toEqual(["They are loose"]);
    here.record("h", "line", "They are loose");
    expect(here.room()?.lines.map(({ text }) => text)).toEqual(["They are loose"]);
    here.record("a1", "line", "Good");
    expect(here.room()?.lines.map(({ name }) => name)).toEqual([null, "Ash"]);
  });

  test("answers 'past' to what can't be taken, and 'taken' where just that was answered already", () => {
    const here = openRoom();
    here.state.view = question;
    here.letIn();
    answers(here);
    here.suggest("propose", { turn: "ice-bin.look", answer: "fine", why: "" });
    expect(here.room()?.open).toHaveLength(1);
    here.suggest("propose", { turn: "door-seal.paper-strip", answer: "holds", why: "" });
    here.suggest("propose", { ending: "fixed", why: "" });
    here.state.view = viewOf(turnWith({ turn: "tray.look", answers: [] }), { ways: [] });
    here.live.look();
    expect(here.room()?.open).toEqual([]);
    const fates = here.puts("heard").map(({ body }) => JSON.parse(body));
    expect(fates.map(({ is }) => is).sort()).toEqual(["past", "past", "taken"]);
    expect(fates.find(({ is }) => is === "taken")).toEqual({ to: 4, is: "taken" });
  });

  test("has three suggestions open at most: older ones are past", () => {
    const here = openRoom();
    here.state.view = question;
    here.letIn();
    for (let count = 0; count < 5; count++) here.suggest("point", { turn: "ice-bin.look", answer: "fine" });
    expect(here.room()?.open.map(({ id }) => id)).toEqual([6, 7, 8]);
  });

  test("is come back to after a reload, paused as it was, and says nothing twice", () => {
    const place = createPlace();
    const before = openRoom(place);
    before.letIn();
    answers(before);
    before.live.pause(true);
    before.live.close();
    const entry = before.puts("entry").map(({ body }) => body);
    const again = openRoom(place);
    expect(again.sent[0]).toMatchObject({ type: "return", room: "r", secret: "s", after: 0 });
    expect(again.puts("pause")).toHaveLength(1);
    again.state.journal = before.state.journal;
    again.letIn();
    again.hear({ type: "all", seq: 3 });
    expect(again.room()?.isPaused).toBe(true);
    expect(again.puts("entry")).toEqual([]);
    again.live.pause(false);
    expect(again.puts("entry").map(({ body }) => body)).toEqual(entry);
    // The page was told of them before.
    expect(again.events).toEqual([]);
  });

  test("is gone from the screen once it is ended, and the relay hears of it, if need be after a reload", () => {
    const place = createPlace();
    const here = openRoom(place);
    here.letIn();
    here.live.end();
    expect(here.room()).toBeNull();
    expect(here.events.at(-1)).toBe("left by householder: ended");
    answers(here);
    expect(here.puts("entry")).toHaveLength(1);
    const again = openRoom(place);
    expect(again.room()).toBeNull();
    expect(again.puts("end")).toHaveLength(1);
    again.hear({ type: "no", why: "ended" });
    expect(place.kept).toBeNull();
  });

  test("says that another tab has it, and leaves it to that one", () => {
    const here = openRoom();
    here.letIn();
    const kept = here.place.kept;
    here.hear({ type: "no", why: "replaced" });
    expect(here.room()?.is).toBe("elsewhere");
    here.live.end();
    expect(here.place.kept).toBe(kept);
    expect(here.room()).toBeNull();
  });

  test.each([
    ["ended", "ended"],
    ["unknown", "ended"],
    ["full", "unable"],
    ["busy", "unable"],
    ["flood", "open"],
  ])("told '%s' it is '%s'", (why, is) => {
    const here = openRoom();
    here.letIn();
    here.hear({ type: "no", why });
    expect(here.room()?.is).toBe(is);
  });

  test("whose code nobody has used says so", () => {
    const here = openRoom();
    here.hear({ type: "no", why: "ended" });
    expect(here.room()?.is).toBe("unused");
  });

  test("opens anew where something else was kept", () => {
    for (const kept of ["{", "7", '{"end":{"senders":{}}}', '{"end":7}', "x".repeat(3_000_000)]) {
      const place = createPlace();
      place.kept = kept;
      expect(openRoom(place).sent[0]).toMatchObject({ type: "open" });
    }
  });
});
