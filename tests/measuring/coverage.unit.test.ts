import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { halfWidthOf } from "../../src/measuring/coverage.ts";
import { estimateOf } from "../../src/measuring/index.ts";
import { createDraws, shareOf } from "./coverage-draws.ts";

const halfWidth = (evenly: number[], normal: number[], coverage: number) =>
  halfWidthOf(estimateOf(0, { evenly, normal }), coverage);
const width = fc.double({ min: 0, max: 1000, noNaN: true });
const shape = fc.record({
  evenly: fc.array(width, { maxLength: 5 }),
  normal: fc.array(width, { minLength: 1, maxLength: 3 }),
});
const share = fc.double({ min: 0.01, max: 0.999, noNaN: true });

describe("where the range is known in closed form", () => {
  test.each([
    // Two-sided quantiles of the normal distribution, any table of it.
    [0.6827, 1],
    [0.9, 1.645],
    [0.95, 1.96],
    [0.98, 2.326],
    [0.99, 2.576],
    [0.9973, 3],
  ])("a normal error is within ± so many u with the probability %d: %d", (coverage, quantile) => {
    expect(halfWidth([], [1], coverage)).toBeCloseTo(quantile, 3);
    expect(halfWidth([], [0.3, 0.4], coverage)).toBeCloseTo(quantile / 2, 3);
  });

  test("an even error within ± a is within ± that part of a", () => {
    fc.assert(
      fc.property(width, share, (a, coverage) => {
        expect(halfWidth([a], [], coverage)).toBeCloseTo(coverage * a, 3);
      }),
    );
  });

  test("two alike make a triangle of half-width 2a, whose tails beyond h hold (1 − h/2a)²", () => {
    for (const coverage of [0.5, 0.9, 0.95, 0.98, 0.999])
      expect(halfWidth([3, 3], [], coverage)).toBeCloseTo(6 - 6 * Math.sqrt(1 - coverage), 4);
  });

  test("two unlike make a trapezoid: flat to a − b, then tails of (a + b − h)²/4ab", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 1, noNaN: true }), share, (b, coverage) => {
        const outer = 1 + b - 2 * Math.sqrt(b * (1 - coverage));
        expect(halfWidth([1, b], [], coverage)).toBeCloseTo(coverage < 1 - b ? coverage : outer, 4);
      }),
    );
  });

  test("where there is no error there is no width", () => {
    expect(halfWidth([], [], 0.95)).toBe(0);
    expect(halfWidth([0, 0], [0], 0.95)).toBe(0);
  });

  test("an error that is nothing changes nothing: an empty jug has no scale error", () => {
    expect(halfWidth([5, 0], [], 0.95)).toBeCloseTo(4.75, 9);
    expect(halfWidth([5, 0, 0], [1, 0], 0.95)).toBe(halfWidth([5], [1], 0.95));
  });
});

/** JCGM 101:2008: draw every error by chance and count how often their sum keeps within the range. */
describe("drawn by chance, errors keep within the range as often as it says", () => {
  function furthest(evenly: number[], normal: number[]): number {
    const off = [0.9, 0.95, 0.98].map((coverage) => {
      const draws = createDraws(20_080_101);
      const half = halfWidth(evenly, normal, coverage);
      const covered = shareOf(100_000, () => {
        const even = evenly.reduce((sum, a) => sum + draws.even(a), 0);
        return Math.abs(normal.reduce((sum, u) => sum + draws.normal(u), even)) <= half;
      });
      return Math.abs(covered - coverage);
    });
    return Math.max(...off);
  }

  test.each<[evenly: number[], normal: number[]]>([
    [[], [1]],
    [[1], []],
    [[1], [0.05]],
    [[1], [0.4]],
    [[1], [3]],
    [[1, 1], []],
    [[1, 0.2], []],
    [[1, 0.2], [0.1]],
    [[1, 0.7], [0.2]],
    [[1, 0.7], [1]],
    [[1, 1, 0.5], [0.1]],
    [[1, 0.1, 0.1, 0.1], []],
    [[1, 1, 1, 1, 1], [0.1]],
    // A jug with 150 ml run into it in 10 s, in ml/s (worked example W4).
    [[0.5, 0.75], [0.15]],
  ])("to 0.3 %%: even %j, normal %j", (evenly, normal) => {
    expect(furthest(evenly, normal)).toBeLessThan(0.003);
  });

  test("to 0.5 %: three alike, of which the third is taken as normal", () => {
    expect(furthest([1, 1, 1], [])).toBeLessThan(0.005);
  });
});

describe("whatever the errors", () => {
  test("a surer range is a wider one", () => {
    fc.assert(
      fc.property(shape, share, share, ({ evenly, normal }, p, q) => {
        const [less, more] = [Math.min(p, q), Math.max(p, q)];
        const wider = halfWidth(evenly, normal, more) * (1 + 1e-6);
        expect(halfWidth(evenly, normal, less)).toBeLessThanOrEqual(wider + 1e-9);
      }),
    );
  });

  test("ten times the errors make ten times the width: the unit does not matter", () => {
    fc.assert(
      fc.property(shape, share, ({ evenly, normal }, coverage) => {
        const tenfold = (widths: number[]) => widths.map((width) => width * 10);
        const [small, large] = [
          halfWidth(evenly, normal, coverage),
          halfWidth(tenfold(evenly), tenfold(normal), coverage),
        ];
        expect(Math.abs(large - 10 * small)).toBeLessThanOrEqual(1e-5 * large + 1e-98);
      }),
    );
  });

  test("the order of the errors does not matter", () => {
    fc.assert(
      fc.property(shape, share, ({ evenly, normal }, coverage) => {
        const [there, back] = [evenly, evenly.toReversed()].map((each) => halfWidth(each, normal, coverage));
        expect(Math.abs((there ?? 0) - (back ?? 0))).toBeLessThanOrEqual(1e-6 * (there ?? 0));
      }),
    );
  });

  test("the range is never wider than all errors at their worst, the normal ones at five times theirs", () => {
    fc.assert(
      fc.property(shape, share, ({ evenly, normal }, coverage) => {
        const worst = [...evenly, 5 * Math.hypot(...normal)].reduce((sum, each) => sum + each, 0);
        const half = halfWidth(evenly, normal, coverage);
        expect(half).toBeGreaterThanOrEqual(0);
        // A thousandth for several even errors that are taken as normal.
        expect(half).toBeLessThanOrEqual(worst * 1.001);
      }),
    );
  });

  test("what is not a number gives no number, and no error", () => {
    for (const odd of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(halfWidthOf({ u: odd }, 0.95)).toBeNaN();
      expect(halfWidth([odd], [1], 0.95)).toBeNaN();
    }
  });
});
