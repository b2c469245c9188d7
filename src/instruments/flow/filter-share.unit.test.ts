import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createDraws, shareOf } from "../../../tests/measuring/coverage-draws.ts";
import { flowLimits as limits } from "./example-limits.ts";
import { assessFilterShare, pointOf } from "./filter-share.ts";
import type { FlowReading, FlowRun } from "./reading.ts";

type Vessel = "ml" | "g";
const flow = (...runs: FlowRun[]): FlowReading => ({ kind: "flow", runs });
const caught = (volume: number, unit: Vessel = "ml", seconds = 10) => flow({ volume, unit, seconds });
const assess = (withFilter: FlowReading, without: FlowReading) =>
  assessFilterShare(withFilter, without, limits);

describe("the share of the pressure that the filter takes", () => {
  test.each([
    // Derived in the trade's handbook: 1 − (Q with it / Q without it)².
    [0.9, 0.19],
    [0.7, 0.51],
    [0.5, 0.75],
  ])("%d times the flow means %d", (ratio, share) => {
    expect(assess(caught(200 * ratio), caught(200))?.share).toBeCloseTo(share, 10);
  });

  test("nothing comes through a filter that takes all of it", () => {
    expect(assess(caught(0), caught(200))).toMatchObject({ share: 1, range: { high: 1 } });
  });

  test("more water with the filter than without is an error of the reading: it takes nothing", () => {
    expect(assess(caught(210), caught(200))).toMatchObject({ share: 0, range: { low: 0 } });
  });

  test("without any water there is nothing to compare", () => {
    expect(assess(caught(100), caught(0))).toBeNull();
    expect(assess(caught(0), caught(0))).toBeNull();
    expect(assess(flow(), caught(200))).toBeNull();
    expect(assess(caught(100), flow())).toBeNull();
  });

  test("the same jug cancels: the share is surer than from a jug and scales, though scales are better", () => {
    const width = (withFilter: Vessel, without: Vessel) => {
      const range = assess(caught(140, withFilter), caught(200, without))?.range;
      return range ? range.high - range.low : Number.NaN;
    };
    expect(width("ml", "ml")).toBeLessThan(width("g", "ml"));
    expect(width("g", "g")).toBeLessThan(width("ml", "ml"));
  });

  const volume = fc.double({ min: 1, max: 1000, noNaN: true });
  const vessel = fc.constantFrom<Vessel[]>("ml", "g");

  test("the range has the share in it and never leaves 0 to 1", () => {
    fc.assert(
      fc.property(volume, volume, vessel, vessel, (less, more, one, other) => {
        const found = assess(caught(less, one), caught(more, other));
        if (!found) throw new Error("There was water");
        const { share, range } = found;
        expect(range.low).toBeGreaterThanOrEqual(0);
        expect(range.low).toBeLessThanOrEqual(share);
        expect(range.high).toBeGreaterThanOrEqual(share);
        expect(range.high).toBeLessThanOrEqual(1);
      }),
    );
  });

  test("more water through the filter never means that it takes more", () => {
    fc.assert(
      fc.property(volume, volume, volume, (one, other, without) => {
        const shareWith = (volume: number) => assess(caught(volume), caught(without))?.share ?? Number.NaN;
        expect(shareWith(Math.max(one, other))).toBeLessThanOrEqual(shareWith(Math.min(one, other)));
      }),
    );
  });

  test("twice the supply makes the same share: it cancels", () => {
    fc.assert(
      fc.property(volume, volume, fc.double({ min: 0.1, max: 10, noNaN: true }), (less, more, factor) => {
        const [weak, strong] = [
          assess(caught(less), caught(more)),
          assess(caught(less * factor), caught(more * factor)),
        ];
        expect(strong?.share).toBeCloseTo(weak?.share ?? Number.NaN, 10);
      }),
    );
  });

  test("no number gives an error, whatever it is", () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), fc.double(), (a, b, s, t) => {
        const found = assess(caught(a, "ml", s), caught(b, "ml", t));
        if (found) expect(found.share).toBeLessThanOrEqual(1);
      }),
    );
  });
});

/** JCGM 101:2008: draw every error by chance. The true shares are far enough from 0 and 1 for no range to be cut. */
describe("the range holds the true share as often as it claims, to 1 %", () => {
  test.each<[withFilter: Vessel, without: Vessel, ratio: number, runs: number]>([
    ["ml", "ml", 0.9, 1],
    ["ml", "ml", 0.5, 1],
    ["ml", "ml", 0.7, 2],
    ["g", "g", 0.7, 1],
    ["g", "g", 0.9, 3],
    ["ml", "g", 0.7, 1],
    ["g", "ml", 0.5, 2],
  ])("with the filter in %s, without in %s: %d times the flow, each in %d", (one, other, ratio, runs) => {
    const { even, normal } = createDraws(20_080_101);
    const covered = shareOf(20_000, () => {
      const scale = 1 + even(limits.jugScale);
      const draw = (unit: Vessel, perSecond: number) =>
        flow(
          ...Array.from({ length: runs }, () => {
            const water = perSecond * 10;
            const volume =
              unit === "g" ? water + even(limits.scaleReading) : water * scale + even(limits.jugReading);
            return { volume, unit, seconds: 10 + normal(limits.timing) };
          }),
        );
      const range = assess(draw(one, 20 * ratio), draw(other, 20))?.range;
      const truth = 1 - ratio ** 2;
      return !!range && range.low <= truth && truth <= range.high;
    });
    expect(Math.abs(covered - limits.coverage)).toBeLessThan(0.01);
  });
});

describe("where the water is held back", () => {
  const much = { range: { low: 0.4, high: 0.6 } };
  const little = { range: { low: 0.1, high: 0.5 } };

  test("in the filter, if it surely takes much and the flow without it is good", () => {
    expect(pointOf({ share: much, without: "passes", supply: null }, 0.3)).toBe("filter");
    expect(pointOf({ share: much, without: "passes", supply: null }, 0.4)).toBe("filter");
  });

  test("nobody knows, if it may take less, or if the flow without it is good and nothing was compared", () => {
    expect(pointOf({ share: little, without: "passes", supply: "fails" }, 0.3)).toBe("unclear");
    expect(pointOf({ share: null, without: "passes", supply: "fails" }, 0.3)).toBe("unclear");
    expect(pointOf({ share: much, without: "unclear", supply: "fails" }, 0.3)).toBe("unclear");
  });

  test("past the filter, if the flow is weak without it: where, the supply tells", () => {
    for (const share of [much, little, null]) {
      expect(pointOf({ share, without: "fails", supply: "fails" }, 0.3)).toBe("supply");
      expect(pointOf({ share, without: "fails", supply: "passes" }, 0.3)).toBe("valve");
      expect(pointOf({ share, without: "fails", supply: "too-strong" }, 0.3)).toBe("valve");
      expect(pointOf({ share, without: "fails", supply: "unclear" }, 0.3)).toBe("supply-or-valve");
      expect(pointOf({ share, without: "fails", supply: null }, 0.3)).toBe("supply-or-valve");
    }
  });
});
