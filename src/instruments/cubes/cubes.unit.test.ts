import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createDraws, shareOf } from "../../../tests/measuring/coverage-draws.ts";
import { assessCubes } from "./assess.ts";
import { checkCubes } from "./check.ts";
import type { CubesLimits } from "./limits.ts";
import type { CubesReading } from "./reading.ts";

/** 140 cm³ fill 8 pieces, 17.5 g each (LBNL, Meier 1995; W17). Kitchen scales ±1 g: common practice, no source. The rest: judgement. */
const limits: CubesLimits = {
  coverage: 0.98,
  scaleReading: 1,
  nominalGrams: 17.5,
  leastGrams: 12,
  fewestPieces: 3,
  mostPieces: 200,
};
const weighed = (pieces: number, mass: number, unit: CubesReading["unit"] = "g"): CubesReading => ({
  kind: "cubes",
  pieces,
  mass,
  unit,
});
const assess = (...reading: Parameters<typeof weighed>) => assessCubes(weighed(...reading), limits);

describe("the weight of a piece", () => {
  test("eight pieces of 140 g are full ones of 17.5 g (LBNL, Meier 1995; W17)", () => {
    const { grams, fill, verdict } = assess(8, 140);
    expect(grams.value).toBe(17.5);
    expect(fill).toBe(1);
    expect(verdict).toBe("passes");
  });

  test("half an ounce each is 14.17 g (NIST SP 811: 453.592 37 g a pound, 16 ounces)", () => {
    expect(assess(8, 4, "oz").grams.value).toBeCloseTo(14.175, 3);
    expect(assess(32, 1, "lb").grams.value).toBeCloseTo(14.175, 3);
    expect(assess(8, 0.14, "kg").grams.value).toBeCloseTo(17.5, 12);
  });

  test("the scales err once for all pieces: ±1 g is 0.98/8 g a piece for 98 % of an even error", () => {
    const { range } = assess(8, 140);
    expect(range.low).toBeCloseTo(17.5 - 0.98 / 8, 5);
    expect(range.high).toBeCloseTo(17.5 + 0.98 / 8, 5);
  });

  test("light pieces fail, and those close to 12 g are too close to call with few of them", () => {
    expect(assess(8, 80).verdict).toBe("fails");
    expect(assess(4, 49)).toMatchObject({ verdict: "passes" });
    expect(assess(4, 48.5).verdict).toBe("unclear");
    expect(assess(40, 490).verdict).toBe("passes");
    const { band } = assess(4, 48);
    expect(band.low).toBeCloseTo(12 - 0.245, 5);
    expect(band.high).toBeCloseTo(12 + 0.245, 5);
  });

  test("an overfilled tray is more than full", () => {
    expect(assess(8, 175).fill).toBeCloseTo(1.25, 12);
  });

  test("the true weight lies in the range as often as claimed, drawn by chance (JCGM 101), to 1 %", () => {
    for (const coverage of [0.95, 0.98])
      for (const pieces of [3, 10, 60]) {
        const draws = createDraws(20_080_101);
        const covered = shareOf(20_000, () => {
          const truth = 12.5 + draws.even(5);
          const reading = weighed(pieces, truth * pieces + draws.even(limits.scaleReading));
          const { low, high } = assessCubes(reading, { ...limits, coverage }).range;
          return low <= truth && truth <= high;
        });
        expect(Math.abs(covered - coverage)).toBeLessThan(0.01);
      }
  });

  test("heavier pieces are never judged worse, and the range contains the weight", () => {
    const rank = { fails: 0, unclear: 1, passes: 2 };
    const mass = fc.double({ min: 0, max: 4000, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 200 }), mass, mass, (pieces, a, b) => {
        const [light, heavy] = [assess(pieces, Math.min(a, b)), assess(pieces, Math.max(a, b))];
        expect(rank[light.verdict]).toBeLessThanOrEqual(rank[heavy.verdict]);
        expect(light.range.low).toBeLessThanOrEqual(light.grams.value);
        expect(light.range.high).toBeGreaterThanOrEqual(light.grams.value);
      }),
    );
  });
});

describe("refusing a weighing that cannot be", () => {
  const check = (...reading: Parameters<typeof weighed>) => checkCubes(weighed(...reading), limits);

  test("too few pieces tell too little, and more than a bin holds are a slip", () => {
    expect(check(2, 35)).toMatchObject({ field: "pieces", code: "too-small", min: 3, max: 200 });
    expect(check(0, 35)).toMatchObject({ field: "pieces", code: "zero" });
    expect(check(201, 35)).toMatchObject({ field: "pieces", code: "too-large" });
    expect(check(3, 35)).toBeNull();
  });

  test("no weight at all and more than 200 full pieces weigh are refused, in the unit that was typed", () => {
    expect(check(8, 0)).toMatchObject({ field: "mass", code: "zero" });
    expect(check(8, -1)).toMatchObject({ field: "mass", code: "negative" });
    expect(check(8, 3501)).toMatchObject({ field: "mass", code: "too-large", min: 1, max: 3500 });
    expect(check(8, 4, "kg")).toMatchObject({ field: "mass", max: 3.5 });
    expect(check(8, 140)).toBeNull();
  });

  test("no number whatever throws", () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), (pieces, mass) => {
        expect(() => check(pieces, mass)).not.toThrow();
        expect(() => assess(pieces, mass)).not.toThrow();
      }),
    );
    expect(assess(0, 0).verdict).toBe("unclear");
  });
});
