import { describe, expect, test } from "vitest";
import { createDraws } from "../../../tests/measuring/coverage-draws.ts";
import { ownFlow } from "../../../tests/own-flow.ts";
import { counts } from "../../../tests/soak/counts.ts";
import { askLimits, type Verdict } from "../../measuring/index.ts";
import { assessFlow } from "./assess.ts";
import { flowLimits } from "./limits.ts";
import type { FlowRun } from "./reading.ts";

/*
 * What becomes of a household under the product's own limits. A person lets the water run for 10 s, and as long as it
 * is too close to call up to twice again for 20 s into the same vessel. The errors are those that the limits state,
 * and the time is rounded to `step` seconds; the stopwatch gives tenths. A wrong 'fails' sells a filter that nobody needs, a wrong 'passes' opens
 * the back of the machine. The seed is fixed.
 */
const limits = flowLimits(askLimits(ownFlow.limits));
const trials = counts.draws;

function measure(unit: "ml" | "g", step: number, trueFlow: number): Record<Verdict, number> {
  const { even, normal } = createDraws(20_080_101);
  const said = { passes: 0, fails: 0, unclear: 0 };
  for (let trial = 0; trial < trials; trial += 1) {
    const scale = unit === "ml" ? 1 + even(limits.jugScale) : 1;
    const reading = unit === "ml" ? limits.jugReading : limits.scaleReading;
    const runs: FlowRun[] = [];
    let verdict: Verdict = "unclear";
    for (const aim of [10, 20, 20]) {
      if (verdict !== "unclear") break;
      const seconds = Math.round((aim + normal(limits.timing)) / step) * step;
      runs.push({ volume: trueFlow * aim * scale + even(reading), unit, seconds });
      verdict = assessFlow({ kind: "flow", runs }, limits).verdict;
    }
    said[verdict] += 1 / trials;
  }
  return said;
}

const flows = [10, 12, 13, 14, 14.5, 14.75, 14.9, 14.99, 15, 15.01, 15.1, 15.25, 15.5, 16, 17, 20];

describe.each([
  ["a jug", "ml", 0.01, 25],
  ["kitchen scales", "g", 0.01, 25],
] as const)("with %s", (_, unit, step, most) => {
  test.each(flows)(`a flow of %d ml/s is judged wrongly in fewer than ${most} of 1000`, (trueFlow) => {
    const { passes, fails } = measure(unit, step, trueFlow);
    expect(trueFlow < limits.minimum ? passes : fails).toBeLessThan(most / 1000);
  });

  test.each([0.9, 1.1])("%d times the limit is told from it within three runs, in 9 of 10", (part) => {
    expect(1 - measure(unit, step, part * limits.minimum).unclear).toBeGreaterThanOrEqual(0.9);
  });
});
