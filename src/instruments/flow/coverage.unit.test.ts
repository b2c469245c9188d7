import { describe, expect, test } from "vitest";
import { createDraws } from "../../../tests/measuring/coverage-draws.ts";
import { assessFlow } from "./assess.ts";
import { flowLimits } from "./example-limits.ts";
import type { FlowRun } from "./reading.ts";

/*
 * JCGM 101:2008: draw every error from its own distribution, push it through the measuring many times,
 * and compare what really happens with what the reading claims. The seed is fixed.
 */
const trials = 10_000;

type Plan = { unit: "ml" | "g"; seconds: number }[];
const repeated = (n: number, unit: "ml" | "g", seconds = 10): Plan =>
  Array.from({ length: n }, () => ({ unit, seconds }));

/** Shares of trials, with a true flow that lies exactly on the minimum. */
function simulate(plan: Plan, trueFlow: number) {
  const limits = { ...flowLimits, minimum: trueFlow };
  const { even, normal } = createDraws(20_080_101);
  let [covered, agreeing, passing, failing, sum, squares, claimed] = [0, 0, 0, 0, 0, 0, 0];
  for (let trial = 0; trial < trials; trial += 1) {
    // One jug for all runs of a trial, so one scale error.
    const scaleError = even(limits.jugScale);
    const runs = plan.map(({ unit, seconds }): FlowRun => {
      const water = trueFlow * seconds;
      const volume =
        unit === "g" ? water + even(limits.scaleReading) : water * (1 + scaleError) + even(limits.jugReading);
      return { volume, unit, seconds: seconds + normal(limits.timing) };
    });
    const { perSecond, range, agree, verdict } = assessFlow({ kind: "flow", runs }, limits);
    if (range.low <= trueFlow && trueFlow <= range.high) covered += 1;
    if (agree) agreeing += 1;
    if (verdict === "passes") passing += 1;
    if (verdict === "fails") failing += 1;
    sum += perSecond.value;
    squares += perSecond.value ** 2;
    claimed += perSecond.u;
  }
  const mean = sum / trials;
  return {
    coverage: covered / trials,
    agreeing: agreeing / trials,
    passing: passing / trials,
    failing: failing / trials,
    bias: mean - trueFlow,
    spread: Math.sqrt(squares / trials - mean ** 2),
    u: claimed / trials,
  };
}

const plans: [string, Plan][] = [
  ["one jug run", repeated(1, "ml")],
  ["two jug runs", repeated(2, "ml")],
  ["three jug runs", repeated(3, "ml")],
  ["one weighing", repeated(1, "g")],
  ["three weighings", repeated(3, "g")],
  ["a jug run and a weighing", [...repeated(1, "ml"), ...repeated(1, "g")]],
  ["jug runs and weighings of unequal length", [...repeated(2, "ml", 20), ...repeated(2, "g", 6)]],
];

describe.each(plans)("%s", (_, plan) => {
  const onLimit = simulate(plan, 15);

  test("the range holds the true flow as often as it claims, to 1 %", () => {
    for (const { coverage } of [onLimit, simulate(plan, 6)])
      expect(Math.abs(coverage - flowLimits.coverage)).toBeLessThan(0.01);
  });

  test("scatters by the standard uncertainty that it claims, to 2 %, round the true flow", () => {
    expect(Math.abs(onLimit.spread / onLimit.u - 1)).toBeLessThan(0.02);
    expect(Math.abs(onLimit.bias)).toBeLessThan(0.05 * onLimit.u);
  });

  test("a flow on the limit passes and fails in 5 % each, to 1 % (ILAC-G8)", () => {
    expect(onLimit.passing).toBeLessThan(0.06);
    expect(onLimit.failing).toBeLessThan(0.06);
  });
});

test("even runs are called uneven in about 5 % of trials or fewer, with two and with three", () => {
  for (const unit of ["ml", "g"] as const) {
    expect(simulate(repeated(2, unit), 15).agreeing).toBeGreaterThan(0.95);
    expect(simulate(repeated(3, unit), 15).agreeing).toBeGreaterThan(0.94);
  }
});

test("with many jug runs, where the even scale error is nearly all that is left, the claim holds to 1 %", () => {
  const { coverage, spread, u } = simulate(repeated(9, "ml"), 15);
  expect(Math.abs(coverage - flowLimits.coverage)).toBeLessThan(0.01);
  expect(Math.abs(spread / u - 1)).toBeLessThan(0.02);
});
