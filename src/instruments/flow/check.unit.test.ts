import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assessFlow } from "./assess.ts";
import { checkFlowRun } from "./check.ts";
import { flowLimits as limits } from "./example-limits.ts";
import type { FlowRun } from "./reading.ts";

const jug = (volume: number, seconds = 10): FlowRun => ({ volume, unit: "ml", seconds });
const assess = (...runs: FlowRun[]) => assessFlow({ kind: "flow", runs }, limits);

describe("a run that cannot be", () => {
  test("an empty jug is a result", () => {
    expect(checkFlowRun(jug(0), limits)).toEqual([]);
    expect(checkFlowRun(jug(150), limits)).toEqual([]);
  });

  test("less than nothing, far too much, and no time are problems of their field", () => {
    expect(checkFlowRun(jug(-1), limits)).toMatchObject([{ field: "volume", code: "negative" }]);
    expect(checkFlowRun(jug(5001), limits)).toMatchObject([{ field: "volume", code: "too-large" }]);
    expect(checkFlowRun(jug(150, 0), limits)).toMatchObject([{ field: "seconds", code: "zero" }]);
    expect(checkFlowRun(jug(150, 0.5), limits)).toMatchObject([{ field: "seconds", code: "too-small" }]);
    expect(checkFlowRun(jug(150, -5), limits)).toMatchObject([{ field: "seconds", code: "negative" }]);
    expect(checkFlowRun(jug(150, 121), limits)).toMatchObject([{ field: "seconds", code: "too-large" }]);
  });

  test("both numbers may be wrong at once, and both are named", () => {
    expect(checkFlowRun(jug(-1, 0), limits).map(({ field }) => field)).toEqual(["volume", "seconds"]);
  });

  test("the most that is believed is given in the unit that was typed: 5 l are 21.13 US cups (NIST SP 811)", () => {
    const [problem] = checkFlowRun({ volume: 150, unit: "us-cup", seconds: 10 }, limits);
    expect(problem?.value).toBe(150);
    expect(problem?.max).toBeCloseTo(21.13, 2);
  });

  test("no number gives an error, whatever it is", () => {
    const any = fc.double();
    const run = fc.record({ volume: any, unit: fc.constantFrom("ml", "us-cup", "g"), seconds: any });
    fc.assert(
      fc.property(fc.array(run, { maxLength: 4 }), (runs) => {
        expect(["passes", "fails", "unclear"]).toContain(assess(...runs).verdict);
      }),
    );
  });

  test("no runs or no time at all give no verdict and no error", () => {
    expect(assess().verdict).toBe("unclear");
    expect(assess(jug(0, 0)).verdict).toBe("unclear");
    expect(assess(jug(150, 0)).verdict).toBe("unclear");
  });
});
