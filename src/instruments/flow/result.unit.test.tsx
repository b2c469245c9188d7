// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { atFlow, used } from "../../../tests/panel/at-flow.tsx";
import { flowNeed } from "../../../tests/panel/gallery/measure-fixtures.ts";

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

// Expected verdicts after JCGM 100:2008: 150 ml in 10 s with a jug, limit 15 ml/s: passes above 15.89, fails below 14.11.
describe("what it means", () => {
  test.each([
    ["160", "Enough water comes out"],
    ["150", "Too close to call"],
    ["140", "Too little water comes out"],
  ])("%s ml in 10 seconds: %s", async (amount, verdict) => {
    const { run, focused } = await atFlow();
    await run(amount);
    expect(focused().textContent).toBe(verdict);
  });

  test("the reading, its doubt and the limit are in the text, not only in the drawing", async () => {
    const { run, text } = await atFlow();
    await run("150");
    expect(text()).toContain("150 ml in 10 seconds, give or take 9. It should be at least 150.");
  });

  test("too close to call makes 'measure again' the first choice, says how, and runs longer", async () => {
    const { run, all, text, tap } = await atFlow();
    await run("150");
    const [firstChoice] = all(".card .answers button");
    expect(firstChoice?.textContent).toBe("Measure again");
    expect(firstChoice?.className).toContain("main");
    expect(text()).toContain("weigh the water if you have kitchen scales");
    await tap("Measure again");
    expect(text()).toContain("run it for 20 seconds");
  });

  test("measuring again pools the runs, and each can be taken out", async () => {
    const { run, tap, all, calls, text } = await atFlow();
    await run("200");
    await tap("Measure again");
    await run("60");
    expect(all(".runs li").map((each) => each.firstChild?.textContent)).toEqual([
      "200 ml, 10 s",
      "60 ml, 10 s",
    ]);
    expect(text()).toContain("Your runs disagree.");
    await tap("Remove: 60 ml, 10 s");
    await tap("Use this");
    expect(used(calls)).toEqual({ kind: "flow", runs: [{ volume: 200, unit: "ml", seconds: 10 }] });
  });

  test("taking out the only run goes back to the stopwatch", async () => {
    const { run, tap, buttons, focused } = await atFlow();
    await run("200");
    await tap("Remove: 200 ml, 10 s");
    expect(buttons()).toContain("Start");
    expect(focused().textContent).toContain("Let the water run");
  });
});

test("the flow need of these tests is that of W4", () => {
  expect(flowNeed).toMatchObject({
    limits: { minimum: 15, coverage: 0.9, jugReading: 5, jugScale: 0.05, timing: 0.1 },
  });
});
