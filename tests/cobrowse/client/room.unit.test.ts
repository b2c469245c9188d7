import { describe, expect, test } from "vitest";
import { emptyRoom, type SharedRoom, withRecord } from "../../../src/cobrowse/client/index.ts";

/** What a log comes to that has these entries: who, what kind, what. */
const roomOf = (...entries: [from: string, kind: string, body?: string][]): SharedRoom =>
  entries.reduce(
    (room, [from, kind, body = ""], place) =>
      withRecord(room, { seq: place + 1, from, n: place, at: place, kind, body }),
    emptyRoom,
  );

describe("a room by its log", () => {
  test("has whoever joined, let in or not, until they go", () => {
    const is = (...more: [string, string, string?][]) =>
      roomOf(["h", "opened"], ["a1", "joined", "Ash"], ...more).people.map((one) => `${one.name} ${one.is}`);
    expect(is()).toEqual(["Ash asking"]);
    expect(is(["h", "admit", "a1"])).toEqual(["Ash in"]);
    expect(is(["h", "turn-away", "a1"])).toEqual(["Ash gone"]);
    expect(is(["h", "admit", "a1"], ["a1", "leave"])).toEqual(["Ash gone"]);
    expect(is(["h", "admit", "a2"])).toEqual(["Ash asking"]);
  });

  test("is paused, goes on and ends", () => {
    expect(roomOf(["h", "pause"]).isPaused).toBe(true);
    expect(roomOf(["h", "pause"], ["h", "resume"]).isPaused).toBe(false);
    expect(roomOf(["h", "end"]).isEnded).toBe(true);
  });

  test("holds what both said, and what became of each suggestion", () => {
    const point = JSON.stringify({ turn: "a.b", answer: "c" });
    const { said } = roomOf(
      ["a1", "joined", "Ash"],
      ["a1", "line", "Hello"],
      ["h", "line", "Hi"],
      ["a1", "point", point],
      ["h", "heard", '{"to":4,"is":"taken"}'],
    );
    expect(said).toMatchObject([
      { seq: 2, by: "agent", suggestion: { kind: "line", text: "Hello" }, is: null },
      { seq: 3, by: "householder", text: "Hi" },
      { seq: 4, by: "agent", suggestion: { kind: "point" }, is: "taken" },
    ]);
  });

  test("has no entry of a journal by an agent, and no fate that is none", () => {
    const room = roomOf(
      ["a1", "joined", "Ash"],
      ["a1", "entry", "{}"],
      ["a1", "end"],
      ["a1", "pause"],
      ["a1", "line", "x"],
      ["h", "heard", '{"to":5,"is":"obeyed"}'],
      ["h", "heard", "nonsense"],
      ["h", "heard", '{"to":"5","is":"taken"}'],
    );
    expect(room).toMatchObject({ carried: [], isEnded: false, isPaused: false, said: [{ is: null }] });
  });

  test("cuts a name that is longer than a name", () => {
    expect(roomOf(["a1", "joined", "x".repeat(500)]).people[0]?.name).toHaveLength(60);
  });
});
