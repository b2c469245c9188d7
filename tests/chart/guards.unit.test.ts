import { describe, expect, test } from "vitest";
// The vocabulary is the flow's own business, so its test goes behind the door.
import { holds, turnsBehind } from "../../src/chart/guards.ts";
import { type ChartContext, createMemory } from "../../src/chart/memory.ts";
import { type Condition, guardOf } from "../../src/condition/index.ts";
import { at, celsius } from "../session/drive.ts";

const memory: ChartContext = {
  ...createMemory("TR-01"),
  findings: {
    "reset.test": { answer: "moved-dry", at: at(1) },
    "freezer-temperature.read": { answer: "passes", reading: celsius(-18), at: at(2) },
    "flow-test.run": { answer: "not-sure", at: at(3) },
  },
  causes: { "bin-full": "fixed", "too-full": "found" },
  done: ["reset"],
  remedies: 2,
  remediesAtWait: 1,
};
const isTrue = (condition: Condition, named: Record<string, Condition> = {}) =>
  holds(memory, guardOf(condition, named), { type: "", at: at(4) });
const moved: Condition = { answered: { turn: "reset.test", is: ["moved-dry", "moved-wet"] } };
const never: Condition = { done: "flow-test" };

describe("a condition", () => {
  test.each<[means: string, condition: Condition, holds: boolean]>([
    ["one of the answers that were given", moved, true],
    ["another answer", { answered: { turn: "reset.test", is: ["nothing-moved"] } }, false],
    ["a turn that was never asked", { answered: { turn: "stop-tap.open", is: ["opened"] } }, false],
    ["a verdict", { verdict: { turn: "freezer-temperature.read", is: ["passes"] } }, true],
    ["a verdict where nobody could measure", { verdict: { turn: "flow-test.run", is: ["not-sure"] } }, false],
    ["a check that is done", { done: "reset" }, true],
    ["a check that is not", never, false],
    ["a fault that was found", { found: ["seal-dirty", "too-full"] }, true],
    ["a fault that was put right, as found", { found: ["bin-full"] }, false],
    ["a fault that was put right", { remedied: ["bin-full"] }, true],
    ["a fault that was only found, as put right", { remedied: ["too-full"] }, false],
    ["something put right and not yet waited for", "unwaited", true],
    ["anything put right at all", "any-remedied", true],
    ["all of several", { all: [moved, { done: "reset" }] }, true],
    ["all of several, one of them not so", { all: [moved, never] }, false],
    ["none at all of none", { all: [] }, true],
    ["any of several", { any: [never, moved] }, true],
    ["any of none", { any: [] }, false],
    ["the opposite", { not: never }, true],
  ])("can mean %s", (_, condition, expected) => {
    expect(isTrue(condition)).toBe(expected);
  });

  test("can be called by its name, and names may lean on names", () => {
    expect(isTrue({ is: "dry" }, { dry: { all: [{ is: "ran" }] }, ran: moved })).toBe(true);
  });

  test("that nobody wrote, or that leans on itself, is told by its name", () => {
    expect(() => isTrue({ is: "dry" })).toThrow('"dry"');
    expect(() => isTrue({ is: "hen" }, { hen: { not: { is: "egg" } }, egg: { is: "hen" } })).toThrow('"hen"');
  });
});

describe("the turns behind a condition", () => {
  const behind = (condition: Condition) => turnsBehind(memory, guardOf(condition, {}));
  const cold: Condition = { verdict: { turn: "freezer-temperature.read", is: ["passes"] } };

  test("are those whose findings make it true, in the order in which it names them", () => {
    expect(behind({ all: [cold, moved] })).toEqual(["freezer-temperature.read", "reset.test"]);
  });

  test("are of alternatives only those that are true", () => {
    const wet: Condition = { answered: { turn: "fill-tube.look", is: ["clear"] } };
    expect(behind({ any: [wet, moved] })).toEqual(["reset.test"]);
  });

  test("are none where it is not true, and none for what was not found", () => {
    expect(behind({ all: [moved, never] })).toEqual([]);
    expect(behind({ not: never })).toEqual([]);
  });
});
