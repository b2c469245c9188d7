import { describe, expect, test } from "vitest";
import { createDraws, shareOf } from "../../../tests/measuring/coverage-draws.ts";
import { ownFlow } from "../../../tests/own-flow.ts";
import { counts } from "../../../tests/soak/counts.ts";
import { askLimits, fromKilopascals } from "../../measuring/index.ts";
import { assessSupply } from "./assess.ts";
import { fill, gauge } from "./example-readings.ts";
import { supplyLimits } from "./limits.ts";

/** JCGM 101:2008: draw every error by chance, under the product's own limits. */
describe("drawn by chance", () => {
  const own = supplyLimits(askLimits(ownFlow.limits), { limit: "supply-pressure-statutory", says: "" });
  const trials = 20_000;
  const drawFill = (perMinute: number, seconds: number) => {
    const { even, normal } = createDraws(20_080_101);
    return () => {
      const litres = (perMinute * seconds) / 60;
      const volume = litres * (1 + even(own.jugScale)) + even(own.jugReading) / 1000;
      return assessSupply(fill(volume, seconds + normal(own.timing)), own);
    };
  };
  const drawGauge = (kilopascals: number) => {
    const { even } = createDraws(20_080_101);
    return () => assessSupply(gauge(fromKilopascals(kilopascals + even(own.gaugeError), "psi"), "psi"), own);
  };

  test.each([
    [9, 30],
    [9, 13],
    [20, 5],
    [2, 60],
  ])(
    "the range of a fill holds the true %d l/min, drawn for %d s, as often as it claims, to 1 %%",
    (flow, s) => {
      const draw = drawFill(flow, s);
      const covered = shareOf(trials, () => {
        const { low, high } = draw().range;
        return low <= flow && flow <= high;
      });
      expect(Math.abs(covered - own.coverage)).toBeLessThan(0.01);
    },
  );

  test.each([30, 172, 300, 800])(
    "the range of a gauge holds the true %d kPa as often, to 1 %%",
    (pressure) => {
      const draw = drawGauge(pressure);
      const covered = shareOf(trials, () => {
        const { low, high } = draw().range;
        return low <= pressure && pressure <= high;
      });
      expect(Math.abs(covered - own.coverage)).toBeLessThan(0.01);
    },
  );

  test.each([7, 8, 8.5, 8.9, 8.99, 9, 9.1, 9.5, 10, 12])(
    "a tap of %d l/min is judged wrongly in fewer than 25 of 1000",
    (flow) => {
      for (const seconds of [13, 30]) {
        const draw = drawFill(flow, seconds);
        const wrong = flow < own.leastPerMinute ? "passes" : "fails";
        expect(shareOf(counts.draws, () => draw().verdict === wrong)).toBeLessThan(0.025);
      }
    },
  );

  test.each([50, 68, 69, 100, 150, 171.9, 172, 180, 400, 540, 552, 552.1, 570, 700])(
    "a supply of %d kPa is judged wrongly in fewer than 25 of 1000",
    (pressure) => {
      const draw = drawGauge(pressure);
      const isWeak = pressure < own.leastKilopascals;
      const isStrong = pressure > own.mostKilopascals;
      const wrong = shareOf(counts.draws, () => {
        const { verdict, belowStatutory } = draw();
        return (
          (verdict === "fails" && !isWeak) ||
          (verdict === "too-strong" && !isStrong) ||
          (verdict === "passes" && (isWeak || isStrong)) ||
          (belowStatutory && pressure >= own.statutoryKilopascals)
        );
      });
      expect(wrong).toBeLessThan(0.025);
    },
  );
});
