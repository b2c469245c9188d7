import { describe, expect, test } from "vitest";
import {
  agentsIn,
  codeEnds,
  createRoomLog,
  endOf,
  judgeJoin,
  judge as judgeOn,
  laneOf,
  noRoom,
  place,
  type Room,
  roomAfter,
  visibleTo,
} from "../../../src/cobrowse/protocol/room/index.ts";

const minute = 60_000;
type Said = [from: string, kind: string, body?: string, at?: number];

/** A room in which this was said, after it was opened at 0. */
function roomOf(...said: Said[]): Room {
  const log = createRoomLog();
  let room = noRoom;
  for (const [from, kind, body = "", at = 0] of [["h", "opened"] as Said, ...said]) {
    const n = (log.lanes.get(`${from} ${laneOf(kind)}`)?.length ?? 0) + 1;
    const placed = place(log, { from, n, kind, body, sealed: "" }, at);
    if (placed.type === "fresh") room = roomAfter(room, placed.stored);
  }
  return room;
}
/** Judges a kind on its own lane. */
const judge = (room: Room, id: string, kind: string, now: number) =>
  judgeOn(room, id, laneOf(kind), kind, now);
const joined: Said[] = [["a1", "joined", "Ash"]];
const admitted: Said[] = [...joined, ["h", "admit", "a1"]];

describe("before an agent is let in", () => {
  test("nothing is carried, from neither side, and nothing is seen", () => {
    const room = roomOf(...joined);
    expect(judge(room, "h", "entry", 0)).toEqual({ wait: "not-admitted" });
    expect(judge(room, "a1", "line", 0)).toEqual({ wait: "not-admitted" });
    expect(visibleTo(room, "a1")).toBe(0);
    expect(visibleTo(room, "h")).toBe(2);
  });

  test("a room that nobody joins ends with its code", () => {
    expect(endOf(roomOf())).toBe(10 * minute);
    expect(endOf(roomOf(["h", "code", "", 9 * minute]))).toBe(19 * minute);
    expect(endOf(roomOf(...joined))).toBe(120 * minute);
  });
});

describe("once an agent is let in", () => {
  test("both may say what is theirs, and the agent sees all of it", () => {
    const room = roomOf(...admitted);
    expect(judge(room, "h", "entry", 0)).toBe("take");
    for (const kind of ["line", "point", "propose", "correct", "told"])
      expect(judge(room, "a1", kind, 0)).toBe("take");
    expect(visibleTo(room, "a1")).toBe(3);
  });

  test("an agent writes no entry, lets nobody in, and neither pauses nor ends", () => {
    const room = roomOf(...admitted);
    for (const kind of ["entry", "admit", "turn-away", "pause", "resume", "code", "end", "opened", "joined"])
      expect(judge(room, "a1", kind, 0), kind).toEqual({ no: "not-yours" });
  });

  test("nobody gets on one lane what the other is for", () => {
    expect(judgeOn(roomOf(...admitted), "h", "carried", "pause", 0)).toEqual({ no: "not-yours" });
    expect(judgeOn(roomOf(...admitted), "h", "steering", "entry", 0)).toEqual({ no: "not-yours" });
  });

  test("a second agent is let in apart", () => {
    const room = roomOf(...admitted, ["h", "code"], ["a2", "joined", "Bea"]);
    expect(judge(room, "a2", "line", 0)).toEqual({ wait: "not-admitted" });
    expect(visibleTo(room, "a2")).toBe(0);
  });

  test("a pause keeps everything where it is, until it is over", () => {
    const paused = roomOf(...admitted, ["h", "pause"]);
    expect(judge(paused, "h", "entry", 0)).toEqual({ wait: "paused" });
    expect(judge(paused, "a1", "line", 0)).toEqual({ wait: "paused" });
    expect(judge(paused, "h", "resume", 0)).toBe("take");
    expect(judge(roomOf(...admitted, ["h", "pause"], ["h", "resume"]), "h", "entry", 0)).toBe("take");
  });

  test.each<[string, Said]>([
    ["turned away", ["h", "turn-away", "a1"]],
    ["leaves", ["a1", "leave"]],
  ])("who %s sees nothing more and says nothing more, and the householder shares with nobody", (_, said) => {
    const room = roomOf(...admitted, said);
    expect(judge(room, "a1", "line", 0)).toEqual({ no: "gone" });
    expect(visibleTo(room, "a1")).toBe(0);
    expect(judge(room, "h", "entry", 0)).toEqual({ wait: "not-admitted" });
    expect(visibleTo(roomOf(...admitted, said, ["h", "admit", "a1"]), "a1")).toBe(0);
  });

  test("after the end nothing is taken, nor after two hours", () => {
    expect(judge(roomOf(...admitted, ["h", "end"]), "h", "entry", 0)).toEqual({ no: "ended" });
    expect(judge(roomOf(...admitted), "h", "entry", 120 * minute - 1)).toBe("take");
    expect(judge(roomOf(...admitted), "h", "entry", 120 * minute)).toEqual({ no: "ended" });
  });
});

describe("a code", () => {
  test("is good for ten minutes, for one agent", () => {
    expect(judgeJoin(roomOf(), 1, 10 * minute - 1)).toBe("take");
    expect(judgeJoin(roomOf(["h", "code", "", minute]), 1, minute)).toBe("no-such-code");
    expect(judgeJoin(roomOf(), 1, 10 * minute)).toBe("no-such-code");
    expect(judgeJoin(roomOf(...joined), 1, 0)).toBe("no-such-code");
    expect(codeEnds(roomOf(...joined))).toBe(null);
  });

  test("ends a room's code before it, and with the room", () => {
    const renewed = roomOf(["h", "code", "", minute]);
    expect(judgeJoin(renewed, 2, minute)).toBe("take");
    expect(judgeJoin(roomOf(["h", "end"]), 1, 0)).toBe("no-such-code");
  });
});

describe("the bounds of a room", () => {
  const agents = (count: number) =>
    Array.from({ length: count }).flatMap<Said>((_, place) => [
      ["h", "code"],
      [`a${place + 1}`, "joined", "x"],
    ]);

  test("five people, whoever has left not counted", () => {
    const four = roomOf(...agents(4), ["h", "code"]);
    expect(agentsIn(four)).toHaveLength(4);
    expect(judgeJoin(four, four.code?.seq ?? 0, 0)).toBe("full");
    const three = roomOf(...agents(4), ["a2", "leave"], ["h", "code"]);
    expect(judgeJoin(three, three.code?.seq ?? 0, 0)).toBe("take");
  });

  test("500 entries, and still it can be paused and ended", () => {
    const full = roomOf(...admitted, ...Array.from({ length: 500 }, (): Said => ["h", "entry", "x"]));
    expect(judge(full, "h", "entry", 0)).toEqual({ wait: "full" });
    expect(judge(full, "a1", "line", 0)).toEqual({ wait: "full" });
    expect(judge(full, "h", "pause", 0)).toBe("take");
  });

  test("100 pauses, codes and the like, and still it can be ended and left", () => {
    const tired = roomOf(...admitted, ...Array.from({ length: 100 }, (): Said => ["h", "pause"]));
    expect(judge(tired, "h", "resume", 0)).toEqual({ no: "full" });
    expect(judge(tired, "h", "end", 0)).toBe("take");
    expect(judge(tired, "a1", "leave", 0)).toBe("take");
  });
});

describe("a log", () => {
  test("numbers a message once: said twice, it is known", () => {
    const log = createRoomLog();
    const draft = { from: "h", n: 1, kind: "opened", body: "" };
    expect(place(log, draft, 5)).toMatchObject({ type: "fresh", stored: { seq: 1, at: 5 } });
    expect(place(log, { ...draft, body: "else" }, 6)).toMatchObject({ type: "known", stored: { body: "" } });
    expect(place(log, { ...draft, n: 3 }, 7)).toEqual({ type: "missing", last: 1 });
    expect(log.records).toHaveLength(1);
  });

  test("knows every message again, not the last alone", () => {
    const log = createRoomLog();
    const say = (n: number) => place(log, { from: "h", n, kind: "entry", body: `${n}` }, n);
    for (let n = 1; n <= 3; n++) say(n);
    for (let n = 1; n <= 3; n++) expect(say(n)).toEqual({ type: "known", stored: log.records[n - 1] });
    expect(say(5)).toEqual({ type: "missing", last: 3 });
  });

  test("takes an admission of nobody for nothing", () => {
    const room = roomOf(["h", "admit", "a1"], ["h", "admit", "h"], ["h", "turn-away", "h"], ...joined);
    expect(visibleTo(room, "a1")).toBe(0);
    expect(judge(room, "h", "end", 0)).toBe("take");
  });

  test("knows nobody by a name that every object has", () => {
    for (const id of ["__proto__", "constructor"])
      expect(judge(roomOf(...admitted), id, "line", 0)).toEqual({ no: "gone" });
  });
});
