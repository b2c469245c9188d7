import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createDraws, shareOf } from "../../../tests/measuring/coverage-draws.ts";
import { assessTemperature } from "./assess.ts";
import { checkTemperature } from "./check.ts";
import { temperatureLimits as limits } from "./example-limits.ts";
import type { TemperatureReading } from "./reading.ts";

const reading = (value: number, more: Partial<TemperatureReading> = {}): TemperatureReading => ({
  kind: "temperature",
  value,
  unit: "C",
  with: "thermometer",
  ...more,
});
const assess = (value: number, more: Partial<TemperatureReading> = {}) =>
  assessTemperature(reading(value, more), limits);

const rank = { fails: 0, unclear: 1, passes: 2 };
const anyWay = fc.record({
  unit: fc.constantFrom("C" as const, "F" as const),
  with: fc.constantFrom("display" as const, "thermometer" as const),
  place: fc.constantFrom("freezer" as const, "fridge" as const, undefined),
  stood: fc.option(fc.double({ min: 0, max: 1000, noNaN: true }), { nil: undefined }),
});
const degrees = fc.double({ min: -60, max: 60, noNaN: true });

describe("judging a temperature", () => {
  test("0 °F is −17.8 °C (USDA FSIS) and cold enough for a limit of −15 °C", () => {
    const { celsius, verdict } = assess(0, { unit: "F" });
    expect(celsius.value).toBeCloseTo(-17.8, 1);
    expect(verdict).toBe("passes");
  });

  test("a thermometer good to ±1 K has standard uncertainty 1/√3 K (JCGM 100 4.3.7), in either unit", () => {
    expect(assess(-18).celsius.u).toBeCloseTo(0.57735, 5);
    expect(assess(0, { unit: "F" }).celsius.u).toBeCloseTo(0.57735, 5);
  });

  test("95 % of an even error of ±1 K lie within ±0.95 K: so wide are range and band, and only there is it unclear", () => {
    const { range, band, limit } = assess(-18);
    expect(limit).toBe(-15);
    expect(range.low).toBeCloseTo(-18.95, 4);
    expect(range.high).toBeCloseTo(-17.05, 4);
    expect(band.low).toBeCloseTo(-15.95, 4);
    expect(band.high).toBeCloseTo(-14.05, 4);
    expect(assess(-16).verdict).toBe("passes");
    expect(assess(-15.9).verdict).toBe("unclear");
    expect(assess(-14.1).verdict).toBe("unclear");
    expect(assess(-14).verdict).toBe("fails");
  });

  test("the display, which errs more, needs more distance from the limit than a thermometer", () => {
    expect(assess(-16.5).verdict).toBe("passes");
    expect(assess(-16.5, { with: "display" }).verdict).toBe("unclear");
  });

  test("a fridge has a limit of its own: 40 °F is 4.4 °C (USDA FSIS), where a freezer is far too warm", () => {
    const fridge = assess(2, { place: "fridge" });
    expect(fridge.limit).toBe(4.4);
    expect(fridge.verdict).toBe("passes");
    expect(assess(7, { place: "fridge" }).verdict).toBe("fails");
    expect(assess(40, { unit: "F", place: "fridge" }).verdict).toBe("unclear");
    expect(assess(2).verdict).toBe("fails");
  });

  test("a reading without a place, as in older logs, is one of the freezer", () => {
    expect(assess(-15.2)).toEqual(assess(-15.2, { place: "freezer" }));
  });
});

// Newton's law of cooling: after t it reads T + (room − T)·e^(−t/τ). Worked with a room of
// 25 °C, τ = 8 min between packs and 60 min in a glass.
describe("a thermometer that has not stood long", () => {
  test.each([
    // T, minutes → what it reads, how much is left
    [-18, 8, -2.1812, 15.8188],
    [-18, 24, -15.8592, 2.1408],
    [-18, 40, -17.7103, 0.2897],
  ])("in a freezer of %d °C after %d min it reads %d °C, %d K too warm", (truth, stood, shown, left) => {
    expect(truth + (25 - truth) * Math.exp(-stood / 8)).toBeCloseTo(shown, 4);
    const { celsius, range } = assess(shown, { stood });
    expect((celsius.evenly?.[1] ?? 0) / 2).toBeCloseTo(left, 3);
    expect(range.low).toBeLessThan(truth);
  });

  test("of freezers that are just cold enough fewer than 2.5 % are called warm, however short it stood (ILAC-G8)", () => {
    const careful = { ...limits, coverage: 0.98 };
    for (const stood of [1, 4, 8, 16, 24, 32, 36, 40, 44, 48, 60]) {
      const draws = createDraws(20_080_101);
      const failed = shareOf(5000, () => {
        const shown = -15 + 40 * Math.exp(-stood / 8) + draws.even(limits.thermometerError);
        return assessTemperature(reading(shown, { stood }), careful).verdict === "fails";
      });
      expect(failed).toBeLessThan(0.025);
    }
  });

  test("a freezer of −18 °C is not called warm after 8, 12 or 16 minutes, and is called cold in the end", () => {
    const after = (stood: number) => assess(-18 + 43 * Math.exp(-stood / 8), { stood }).verdict;
    expect([8, 12, 16, 45].map(after)).toEqual(["unclear", "unclear", "unclear", "passes"]);
  });

  test("it is settled once less than half of its own error is left: 8·ln(43/0.5) = 35.6 min, asked for as 40", () => {
    const at = (stood: number) => assess(-18 + 43 * Math.exp(-stood / 8), { stood });
    expect(at(35).settled).toBe(false);
    expect(at(36).settled).toBe(true);
    expect(at(35).minutesNeeded).toBe(40);
    expect(at(5).minutesNeeded).toBe(40);
  });

  test("in a glass of water it takes hours: 60·ln(21/0.5) = 224 min for a fridge of 4 °C", () => {
    const glass = assess(4 + 21 * Math.exp(-2), { place: "fridge", stood: 120 });
    expect(glass.settled).toBe(false);
    expect(glass.minutesNeeded).toBe(225);
    expect(assess(4, { place: "fridge", stood: 300 }).settled).toBe(true);
  });

  test("just laid in it tells nothing, not even in a kitchen hotter than we thought", () => {
    for (const value of [-18, 20, 25, 31]) {
      const { verdict, settled, minutesNeeded, range } = assess(value, { stood: 0 });
      expect(verdict).toBe("unclear");
      expect(settled).toBe(false);
      expect(minutesNeeded).toBeGreaterThan(0);
      expect(Number.isFinite(range.low + range.high)).toBe(true);
    }
  });

  test("a display stands for nothing: it has no time to settle", () => {
    expect(assess(-18, { with: "display", stood: 1 })).toEqual(assess(-18, { with: "display" }));
    expect(assess(-18, { with: "display" }).settled).toBe(true);
  });

  test("where nobody said how long, it counts as settled", () => {
    expect(assess(-18).settled).toBe(true);
  });

  test("the longer it stood, the narrower is the range", () => {
    const minutes = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(degrees, minutes, minutes, (value, a, b) => {
        const width = (stood: number) => {
          const { low, high } = assess(value, { stood }).range;
          return high - low;
        };
        expect(width(Math.max(a, b))).toBeLessThanOrEqual(width(Math.min(a, b)) + 1e-9);
      }),
    );
  });

  test("as long as it is told to wait, and it is settled", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (truth, early) => {
          const at = (stood: number) => assess(truth + (25 - truth) * Math.exp(-stood / 8), { stood });
          expect(at(at(early).minutesNeeded).settled).toBe(true);
        },
      ),
    );
  });
});

describe("any temperature", () => {
  test("colder is never judged worse, wherever, however and however long it was read", () => {
    fc.assert(
      fc.property(degrees, degrees, anyWay, (a, b, way) => {
        const colder = assess(Math.min(a, b), way).verdict;
        const warmer = assess(Math.max(a, b), way).verdict;
        expect(rank[colder]).toBeGreaterThanOrEqual(rank[warmer]);
      }),
      { numRuns: 500 },
    );
  });

  test("the range contains the reading, and passes and fails keep it on one side of the limit", () => {
    fc.assert(
      fc.property(degrees, anyWay, (value, way) => {
        const { celsius, range, limit, verdict } = assess(value, way);
        expect(range.low).toBeLessThanOrEqual(celsius.value);
        expect(range.high).toBeGreaterThanOrEqual(celsius.value);
        if (verdict === "passes") expect(range.high).toBeLessThan(limit);
        if (verdict === "fails") expect(range.low).toBeGreaterThan(limit);
      }),
    );
  });

  test("no number whatever throws", () => {
    const anyNumber = fc.double();
    fc.assert(
      fc.property(anyNumber, anyNumber, anyWay, (value, stood, way) => {
        expect(() => assess(value, { ...way, stood })).not.toThrow();
        expect(() => checkTemperature(reading(value, way), limits)).not.toThrow();
      }),
    );
    expect(assess(Number.NaN).verdict).toBe("unclear");
  });

  test("the true temperature lies in the range as often as claimed, drawn by chance (JCGM 101), to 1 %", () => {
    for (const by of ["display", "thermometer"] as const) {
      const draws = createDraws(20_080_101);
      const error = by === "display" ? limits.displayError : limits.thermometerError;
      const covered = shareOf(20_000, () => {
        const { low, high } = assess(-17 + draws.even(error), { with: by }).range;
        return low <= -17 && -17 <= high;
      });
      expect(Math.abs(covered - limits.coverage)).toBeLessThan(0.01);
    }
  });
});

describe("refusing a temperature that cannot be", () => {
  test("−60 and +60 °C are believed, beyond is not, zero and below zero are fine", () => {
    for (const value of [-60, -18, 0, 60]) expect(checkTemperature(reading(value), limits)).toBeNull();
    expect(checkTemperature(reading(-60.1), limits)?.code).toBe("too-small");
    expect(checkTemperature(reading(61), limits)?.code).toBe("too-large");
  });

  test("the range is given in the unit that was typed: −76 to 140 °F (°F = 1.8 °C + 32)", () => {
    expect(checkTemperature(reading(141, { unit: "F" }), limits)).toEqual({
      code: "too-large",
      value: 141,
      min: -76,
      max: 140,
    });
    expect(checkTemperature(reading(100, { unit: "F" }), limits)).toBeNull();
  });
});
