import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { combine, verdictOutside } from "../../src/measuring/estimate.ts";
import {
  estimateOf,
  guardBand,
  quotient,
  rangeOf,
  rectangular,
  verdictAgainst,
} from "../../src/measuring/index.ts";

const positive = fc.double({ min: 0.01, max: 1e4, noNaN: true });

describe("uncertainty (JCGM 100:2008)", () => {
  test("an error anywhere within ±a has standard uncertainty a/√3 (4.3.7)", () => {
    expect(rectangular(3)).toBeCloseTo(1.7320508, 7);
    // The same from the definition: the root of the mean square of points spread evenly over ±3.
    const points = Array.from({ length: 20001 }, (_, i) => -3 + (6 * i) / 20000);
    const meanSquare = points.reduce((sum, point) => sum + point ** 2, 0) / points.length;
    expect(rectangular(3)).toBeCloseTo(Math.sqrt(meanSquare), 3);
  });

  test("a quotient adds relative uncertainties by squares (5.1.6)", () => {
    fc.assert(
      fc.property(positive, positive, positive, positive, (value, u, seconds, timing) => {
        const result = quotient({ value, u }, { value: seconds, u: timing });
        expect((result.u / result.value) ** 2 / ((u / value) ** 2 + (timing / seconds) ** 2)).toBeCloseTo(
          1,
          9,
        );
      }),
    );
  });

  test("150 ml with u 5.204 in 10 s with u 0.10 is 15.0 ml/s with u 0.5416, 3.61 % (worked example W4)", () => {
    const volume = { value: 150, u: Math.hypot(rectangular(5), rectangular(0.05 * 150)) };
    expect(volume.u).toBeCloseTo(5.204, 3);
    const flow = quotient(volume, { value: 10, u: 0.1 });
    expect(flow.value).toBe(15);
    expect(flow.u).toBeCloseTo(0.5416, 4);
    expect(flow.u / flow.value).toBeCloseTo(0.0361, 4);
  });

  test("nothing at all still has an uncertainty, where the relative form would divide by zero", () => {
    expect(quotient({ value: 0, u: 3 }, { value: 10, u: 0.1 })).toMatchObject({ value: 0, u: 0.3 });
  });

  test("errors of both shapes add by squares, and the even ones are remembered", () => {
    // ±3 evenly is 3/√3 = √3; with 1 that is 2.
    expect(estimateOf(7, { evenly: [3], normal: [1] })).toEqual({ value: 7, u: 2, evenly: [3] });
    expect(estimateOf(7, {})).toEqual({ value: 7, u: 0, evenly: [] });
  });

  test("an even error keeps its shape in a quotient and in a mean, at the size that it has there", () => {
    const [volume, seconds] = [estimateOf(150, { evenly: [5] }), estimateOf(10, { evenly: [0.2] })];
    expect(quotient(volume, seconds).evenly).toEqual([0.5, expect.closeTo(0.3, 12)]);
    expect(quotient(volume, seconds).u).toBeCloseTo(Math.hypot(0.5, 0.3) / Math.sqrt(3), 12);
    // Alike in u, so each counts half.
    expect(combine(estimateOf(1, { evenly: [4] }), estimateOf(2, { evenly: [4] })).evenly).toEqual([2, 2]);
  });

  test("the range of an even error has no more than its whole width (JCGM 101:2008)", () => {
    expect(rangeOf(estimateOf(10, { evenly: [2] }), 0.95)).toEqual({
      low: expect.closeTo(8.1, 9),
      high: expect.closeTo(11.9, 9),
    });
  });

  test("two independent estimates combine with weights 1/u² (least u by 5.1.2): 10 ± 1 and 13 ± 2", () => {
    // Weights 4/5 and 1/5: 10·0.8 + 13·0.2 = 10.6; u² = 0.8²·1 + 0.2²·4 = 0.8.
    const { value, u } = combine({ value: 10, u: 1 }, { value: 13, u: 2 });
    expect(value).toBeCloseTo(10.6, 12);
    expect(u ** 2).toBeCloseTo(0.8, 12);
  });

  test("a second estimate never makes the first worse", () => {
    fc.assert(
      fc.property(positive, positive, positive, positive, (value, u, other, otherU) => {
        const both = combine({ value, u }, { value: other, u: otherU });
        expect(both.u).toBeLessThanOrEqual(Math.min(u, otherU) * (1 + 1e-12));
      }),
    );
  });
});

describe("verdict with a guard band on both sides (JCGM 106:2012, ILAC-G8:09/2019)", () => {
  // 5 % on each side, which is 1.645 u of a normal distribution.
  const rule = { limit: 15, better: "above", coverage: 0.9 } as const;
  const flow = (value: number) => ({ value, u: 0.5416 });

  test("passes above 15.89 ml/s, fails below 14.11, is unclear between (worked example W4)", () => {
    expect(1.645 * 0.5416).toBeCloseTo(0.891, 3);
    const { low, high } = guardBand(flow(20), 15, 0.9);
    expect(low).toBeCloseTo(14.11, 2);
    expect(high).toBeCloseTo(15.89, 2);
    expect(verdictAgainst(flow(15.9), rule)).toBe("passes");
    expect(verdictAgainst(flow(15.88), rule)).toBe("unclear");
    expect(verdictAgainst(flow(15), rule)).toBe("unclear");
    expect(verdictAgainst(flow(14.12), rule)).toBe("unclear");
    expect(verdictAgainst(flow(14.1), rule)).toBe("fails");
  });

  test("where less is better the same numbers turn round", () => {
    expect(verdictAgainst(flow(15.9), { ...rule, better: "below" })).toBe("fails");
    expect(verdictAgainst(flow(15), { ...rule, better: "below" })).toBe("unclear");
    expect(verdictAgainst(flow(14.1), { ...rule, better: "below" })).toBe("passes");
  });

  test("a better value never turns a verdict for the worse", () => {
    const rank = { fails: 0, unclear: 1, passes: 2 };
    const value = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(value, value, positive, value, (a, b, u, limit) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        const above = { limit, better: "above", coverage: 0.9 } as const;
        const below = { ...above, better: "below" } as const;
        expect(rank[verdictAgainst({ value: less, u }, above)]).toBeLessThanOrEqual(
          rank[verdictAgainst({ value: more, u }, above)],
        );
        expect(rank[verdictAgainst({ value: less, u }, below)]).toBeGreaterThanOrEqual(
          rank[verdictAgainst({ value: more, u }, below)],
        );
      }),
    );
  });

  test("more uncertainty never turns unclear into a verdict", () => {
    fc.assert(
      fc.property(positive, positive, positive, (value, u, more) => {
        if (verdictAgainst({ value, u }, rule) === "unclear")
          expect(verdictAgainst({ value, u: u + more }, rule)).toBe("unclear");
      }),
    );
  });

  test("the ends of the guard band belong to it", () => {
    const band = { low: 14, high: 16 };
    expect([13.9, 14, 16, 16.1].map((value) => verdictOutside(value, band, "above"))).toEqual([
      "fails",
      "unclear",
      "unclear",
      "passes",
    ]);
    expect(verdictOutside(16.1, band, "below")).toBe("fails");
  });

  test("what is not a number is unclear", () => {
    expect(verdictAgainst({ value: Number.NaN, u: 1 }, rule)).toBe("unclear");
    expect(verdictAgainst({ value: 1, u: Number.NaN }, rule)).toBe("unclear");
  });
});
