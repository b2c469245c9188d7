import { describe, expect, test } from "vitest";
import { assessFlow, type FlowRun } from "../../src/measurement/index.ts";
import { flowLimits } from "./example-limits.ts";

/*
 * JCGM 101:2008: draw every error from its own distribution, push it through the measurement many times,
 * and compare what really happens with what the GUM's formula claims. The seed is fixed.
 */
const trials = 20_000;

function createRandom(seed: number): () => number {
  let state = seed; // mulberry32, a public-domain generator
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Plan = { unit: "ml" | "g"; seconds: number }[];
const repeated = (n: number, unit: "ml" | "g", seconds = 10): Plan =>
  Array.from({ length: n }, () => ({ unit, seconds }));

/** Shares of trials, with a true flow that lies exactly on the minimum. */
function simulate(plan: Plan, trueFlow: number) {
  const limits = { ...flowLimits, minimum: trueFlow };
  const random = createRandom(20_080_101);
  const even = (halfWidth: number) => (2 * random() - 1) * halfWidth;
  // Box and Muller; 1 − random() is never 0.
  const normal = (u: number) => u * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  let [covered, agreeing, passing, sum, squares, claimed] = [0, 0, 0, 0, 0, 0];
  for (let trial = 0; trial < trials; trial += 1) {
    // One jug for all runs of a trial, so one scale error.
    const scaleError = even(limits.jugScale);
    const runs = plan.map(({ unit, seconds }): FlowRun => {
      const water = trueFlow * seconds;
      const volume =
        unit === "g" ? water + even(limits.scaleReading) : water * (1 + scaleError) + even(limits.jugReading);
      return { volume, unit, seconds: seconds + normal(limits.timing) };
    });
    const { perSecond, agree, verdict } = assessFlow({ kind: "flow", runs }, limits);
    if (Math.abs(perSecond.value - trueFlow) <= limits.guard * perSecond.u) covered += 1;
    if (agree) agreeing += 1;
    if (verdict === "passes") passing += 1;
    sum += perSecond.value;
    squares += perSecond.value ** 2;
    claimed += perSecond.u;
  }
  const mean = sum / trials;
  return {
    coverage: covered / trials,
    agreeing: agreeing / trials,
    passing: passing / trials,
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

  test("covers the true flow in 90 % of trials with 1.645 u, to 2 %", () => {
    expect(Math.abs(onLimit.coverage - 0.9)).toBeLessThan(0.02);
    expect(Math.abs(simulate(plan, 6).coverage - 0.9)).toBeLessThan(0.02);
  });

  test("scatters by the standard uncertainty that it claims, to 2 %, round the true flow", () => {
    expect(Math.abs(onLimit.spread / onLimit.u - 1)).toBeLessThan(0.02);
    expect(Math.abs(onLimit.bias)).toBeLessThan(0.05 * onLimit.u);
  });

  test("passes a flow that only just reaches the minimum in under 5 % of trials (ILAC-G8)", () => {
    expect(onLimit.passing).toBeLessThan(0.05);
  });
});

test("even runs are called uneven in about 5 % of trials or fewer, with two and with three", () => {
  for (const unit of ["ml", "g"] as const) {
    expect(simulate(repeated(2, unit), 15).agreeing).toBeGreaterThan(0.95);
    expect(simulate(repeated(3, unit), 15).agreeing).toBeGreaterThan(0.94);
  }
});

test("with many jug runs the lasting scale error makes the claim a little too wide, never too narrow", () => {
  const { coverage, spread, u } = simulate(repeated(9, "ml"), 15);
  expect(coverage).toBeGreaterThan(0.9);
  expect(Math.abs(spread / u - 1)).toBeLessThan(0.02);
});
