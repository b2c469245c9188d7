import { describe, expect, test } from "vitest";
// What a transition notes down is the flow's own business, so its test goes behind the door.
import { createMemory, type Note, remember } from "../../src/chart/memory.ts";

const event = { type: "answered.dry", at: "2026-03-02T08:00:00Z" };
const memoryAfter = (...notes: Note[]) =>
  notes.reduce((memory, note) => remember(memory, note, event), createMemory());
const emptied: Note = { turn: "ice-bin.empty", answer: "emptied", remedies: "bin-full" };

describe("an ending as fixed", () => {
  test("is owed to what was put right last, where its own answer puts nothing right", () => {
    expect(memoryAfter(emptied, { creditsLastFix: true }).cause).toBe("bin-full");
  });

  test("is owed to what its own answer put right, and not to what came before", () => {
    const tightened: Note = { turn: "tap-joint.tighten", answer: "dry-now", remedies: "joint-leaks" };
    expect(memoryAfter(emptied, { ...tightened, creditsLastFix: true }).cause).toBe("joint-leaks");
    expect(memoryAfter({ ...tightened, creditsLastFix: true }).cause).toBe("joint-leaks");
  });

  test("is owed to nothing where nothing was put right", () => {
    expect(memoryAfter({ creditsLastFix: true }).cause).toBeNull();
  });
});

test("putting something right takes back what a wait before it showed, and nothing else", () => {
  const waited: Note = { turn: "wait-for-ice.came", answer: "no-ice" };
  const { findings } = memoryAfter(waited, { ...emptied, forgets: ["wait-for-ice"] });
  expect(Object.keys(findings)).toEqual(["ice-bin.empty"]);
});

test("a part that was fitted without help is known by the cause that it was named for", () => {
  const card = remember(createMemory(), { cause: "filter-clogged" }, { type: "measured", at: "" });
  const back = remember(card, { fitted: true, cause: null }, { type: "trouble-returned", at: "" });
  expect(back).toMatchObject({ fitted: ["filter-clogged"], cause: null });
});

describe("a fix after which the ice stayed away", () => {
  const event = (minute: number) => ({ type: "answered", at: `2026-03-02T08:0${minute}:00Z` });
  const unlocked: Note = { turn: "control-lock.unlock", answer: "unlocked", remedies: "control-locked" };
  const noIce: Note = { turn: "wait-for-ice.came", answer: "no-ice", inVain: true };
  const emptiedLater: Note = { ...emptied, forgets: ["wait-for-ice"] };

  test("stays known as tried in vain when something else is put right later", () => {
    const memory = [unlocked, noIce, emptiedLater].reduce(
      (before, note, minute) => remember(before, note, event(minute)),
      createMemory(),
    );
    expect(memory.inVain).toEqual(["control-locked"]);
    expect(memory.untried).toEqual([emptied.remedies]);
  });

  test("counts once a wait, however often the wait is asked about again", () => {
    const memory = [unlocked, noIce, noIce].reduce(
      (before, note, minute) => remember(before, note, event(minute)),
      createMemory(),
    );
    expect(memory.inVain).toEqual(["control-locked"]);
  });
});
