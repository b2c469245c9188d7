import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assessIce } from "./assess.ts";
import { checkIce } from "./check.ts";
import { iceLimits as limits } from "./example-limits.ts";
import type { IceLimits } from "./limits.ts";
import type { IceReading } from "./reading.ts";

const exact: IceLimits = {
  ...limits,
  pieceGrams: { low: 17.5, high: 17.5 },
  batchGrams: { low: 140, high: 140 },
};
const ice = (by: IceReading["by"], amount: number, more: Partial<IceReading> = {}): IceReading => ({
  kind: "ice",
  by,
  amount,
  hours: 24,
  wanted: null,
  ...more,
});
const assess = (...reading: Parameters<typeof ice>) => assessIce(ice(...reading), limits);
const perDay = (reading: IceReading) => assessIce(reading, exact).perDay.value;

const anyBy = fc.constantFrom("pieces" as const, "weight" as const, "batches" as const);
const anyEstimate = (min: number, max: number) =>
  fc.option(
    fc.record({
      value: fc.double({ min, max, noNaN: true }),
      u: fc.double({ min: 0, max: 3, noNaN: true }),
    }),
    { nil: undefined },
  );
const anyCase = fc.record({
  hours: fc.double({ min: 3, max: 96, noNaN: true }),
  pieceGrams: fc.option(fc.double({ min: 5, max: 40, noNaN: true }), { nil: undefined }),
  wanted: fc.constantFrom(null, "little" as const, "some" as const, "much" as const),
  celsius: anyEstimate(-40, 10),
  perSecond: anyEstimate(0, 40),
});
const anyAmount = fc.double({ min: 0, max: 250, noNaN: true });

describe("ice in 24 hours (LBNL, Meier 1995; W17)", () => {
  test("2000 g a day are 14.286 batches of 140 g, one in 100.8 min", () => {
    expect(perDay(ice("batches", 14.2857))).toBeCloseTo(2, 4);
    expect(perDay(ice("batches", 5, { hours: (5 * 100.8) / 60 }))).toBeCloseTo(2, 9);
  });

  test("500 g are 28.57 pieces of 17.5 g", () => {
    expect(perDay(ice("pieces", 28.5714))).toBeCloseTo(0.5, 4);
    expect(assess("pieces", 28.5714, { pieceGrams: 17.5 }).perDay.value).toBeCloseTo(0.5, 4);
  });

  test("a weight counts as it is: 2 lb (907.185 g, NIST SP 811) in half a day are 1.814 kg a day", () => {
    expect(perDay(ice("weight", 2, { unit: "lb", hours: 12 }))).toBeCloseTo(1.81437, 5);
    expect(perDay(ice("weight", 1000))).toBe(1);
  });

  test("a weight without a unit was in grams", () => {
    expect(assess("weight", 700)).toEqual(assess("weight", 700, { unit: "g" }));
  });
});

describe("how sure that is", () => {
  test("pieces of unknown weight, 10 to 25 g, leave a wide range, and weighing one narrows it", () => {
    const unknown = assess("pieces", 100).range;
    expect(unknown.low).toBeLessThan(1.1);
    expect(unknown.high).toBeGreaterThan(2.4);
    const weighed = assess("pieces", 100, { pieceGrams: 17.5 }).range;
    expect(weighed.high - weighed.low).toBeLessThan((unknown.high - unknown.low) / 3);
  });

  test("half an hour of 24 is 2 %: a weighing of 1 kg is known within about 20 g", () => {
    const { low, high } = assess("weight", 1000).range;
    expect(low).toBeCloseTo(1 / (1 + 0.98 / 48), 3);
    expect(high).toBeCloseTo(1 / (1 - 0.98 / 48), 3);
  });

  test("of 3 hours it is a sixth, and the range reaches further up than down, as 1/t does", () => {
    const { range, perDay } = assess("weight", 125, { hours: 3 });
    expect(range.low).toBeCloseTo(1 / (1 + 0.98 / 6), 2);
    expect(range.high).toBeCloseTo(1 / (1 - 0.98 / 6), 2);
    expect(range.high - perDay.value).toBeGreaterThan(perDay.value - range.low);
  });

  test("no batch in 12 hours may be one that has just fallen and one that is about to: some ice, not none for certain", () => {
    const { range } = assess("batches", 0, { hours: 12 });
    expect(range.low).toBe(0);
    expect(range.high).toBeGreaterThan(0.2);
    expect(range.high).toBeLessThan(0.28);
  });

  test("an empty bin is no ice at all, for certain", () => {
    expect(assess("pieces", 0).range).toEqual({ low: 0, high: 0 });
    expect(assess("pieces", 0).verdict).toBe("fails");
  });
});

describe("what a sound machine could make", () => {
  test("without conditions it is one to two kilograms a day", () => {
    expect(assess("weight", 1000).possible).toEqual({ low: 1, high: 2 });
  });

  test("at −9 °C water takes twice as long to freeze as at −18 °C (Plank, W11), so it is half", () => {
    const { possible } = assess("weight", 1000, { celsius: { value: -9, u: 0 } });
    expect(possible.low).toBeCloseTo(0.5, 9);
    expect(possible.high).toBeCloseTo(1, 9);
  });

  test("colder than the target and faster than the least flow give no more", () => {
    const { possible } = assess("weight", 1000, {
      celsius: { value: -25, u: 0 },
      perSecond: { value: 30, u: 0 },
    });
    expect(possible).toEqual({ low: 1, high: 2 });
  });

  test("a third of the least flow gives a third, no flow and 0 °C give nothing", () => {
    expect(assess("weight", 1000, { perSecond: { value: 5, u: 0 } }).possible.low).toBeCloseTo(1 / 3, 9);
    expect(assess("weight", 1000, { perSecond: { value: 0, u: 0 } }).possible.high).toBeCloseTo(0, 9);
    expect(assess("weight", 1000, { celsius: { value: 0, u: 0 } }).possible.high).toBeCloseTo(0, 9);
  });

  test("what is not sure of the conditions widens it: −12 °C with u = 0.5 K, 2.326 u to each side", () => {
    const { possible } = assess("weight", 1000, { celsius: { value: -12, u: 0.5 } });
    expect(possible.low).toBeCloseTo((12 - 1.163) / 18, 3);
    expect(possible.high).toBeCloseTo((2 * (12 + 1.163)) / 18, 3);
  });

  test("the shape of an error, which a log does not keep, changes nothing", () => {
    const celsius = { value: -12, u: 0.5, evenly: [0.5 * Math.sqrt(3)] };
    const kept = { value: -12, u: 0.5 };
    expect(assess("weight", 1000, { celsius })).toEqual(assess("weight", 1000, { celsius: kept }));
  });
});

describe("the verdict", () => {
  test("half a kilogram of one to two fails, one and a half passes, one is too close to call", () => {
    expect(assess("weight", 500).verdict).toBe("fails");
    expect(assess("weight", 1500).verdict).toBe("passes");
    expect(assess("weight", 1000).verdict).toBe("unclear");
  });

  // A warm freezer is the finding: it excuses little ice, and does not make it enough.
  test("what fails in a cold freezer is all that a warm one can make, and still not enough", () => {
    expect(assess("weight", 600, { celsius: { value: -9, u: 0.3 } }).verdict).toBe("unclear");
    expect(assess("weight", 600, { celsius: { value: -18, u: 0.3 } }).verdict).toBe("fails");
  });

  test("as much as it can, but less than people want, is demand and no fault", () => {
    expect(assess("weight", 1200, { wanted: "much" })).toMatchObject({
      verdict: "demand",
      wanted: { low: 1.5, high: 5 },
    });
    expect(assess("weight", 1200, { wanted: "some" }).verdict).toBe("passes");
    expect(assess("weight", 1600, { wanted: "much" }).verdict).toBe("passes");
  });

  test("a machine that makes too little fails however much is wanted", () => {
    for (const wanted of ["little", "some", "much"] as const)
      expect(assess("weight", 500, { wanted }).verdict).toBe("fails");
  });

  test("more ice is never judged worse", () => {
    const rank = { fails: 0, unclear: 1, demand: 2, passes: 3 };
    fc.assert(
      fc.property(anyBy, anyAmount, anyAmount, anyCase, (by, a, b, more) => {
        const less = assess(by, Math.min(a, b), more).verdict;
        const plenty = assess(by, Math.max(a, b), more).verdict;
        expect(rank[less]).toBeLessThanOrEqual(rank[plenty]);
      }),
    );
  });

  test("the range contains the yield, starts at 0 or above, and lies where the verdict says", () => {
    fc.assert(
      fc.property(anyBy, anyAmount, anyCase, (by, amount, more) => {
        const { perDay, range, possible, verdict } = assess(by, amount, more);
        expect(range.low).toBeGreaterThanOrEqual(0);
        expect(range.low).toBeLessThanOrEqual(perDay.value);
        expect(range.high).toBeGreaterThanOrEqual(perDay.value);
        expect(possible.low).toBeLessThanOrEqual(possible.high);
        if (verdict === "fails") expect(range.high).toBeLessThan(possible.low);
        if (verdict === "passes" || verdict === "demand")
          expect(range.low).toBeGreaterThanOrEqual(possible.low);
      }),
    );
  });
});

describe("refusing what cannot be", () => {
  const check = (...reading: Parameters<typeof ice>) => checkIce(ice(...reading), limits);

  test("none at all is believed, less than none and more than 20 kg are not, in the unit that was typed", () => {
    for (const by of ["pieces", "weight", "batches"] as const) {
      expect(check(by, 0)).toBeNull();
      expect(check(by, -1)).toMatchObject({ field: "amount", code: "negative" });
    }
    expect(check("weight", 21, { unit: "kg" })).toMatchObject({
      field: "amount",
      code: "too-large",
      max: 20,
    });
    expect(check("pieces", 2001)).toMatchObject({ code: "too-large", max: 2000 });
    expect(check("batches", 201)).toMatchObject({ code: "too-large", max: 200 });
  });

  test("under three hours and over four days are refused", () => {
    expect(check("weight", 500, { hours: 2 })).toMatchObject({ field: "hours", code: "too-small", min: 3 });
    expect(check("weight", 500, { hours: 0 })).toMatchObject({ field: "hours", code: "zero" });
    expect(check("weight", 500, { hours: 97 })).toMatchObject({ field: "hours", max: 96 });
  });

  test("a piece lighter than the scales can tell or heavier than a batch is refused, where pieces are counted", () => {
    expect(check("pieces", 50, { pieceGrams: 0 })).toMatchObject({ field: "pieceGrams", code: "zero" });
    expect(check("pieces", 50, { pieceGrams: 181 })).toMatchObject({ field: "pieceGrams", max: 180 });
    expect(check("pieces", 50, { pieceGrams: 8 })).toBeNull();
    expect(check("weight", 50, { pieceGrams: 0 })).toBeNull();
  });

  test("no number whatever throws", () => {
    fc.assert(
      fc.property(
        anyBy,
        fc.record({ a: fc.double(), h: fc.double(), p: fc.double(), c: fc.double(), u: fc.double() }),
        (by, { a, h, p, c, u }) => {
          const reading = ice(by, a, {
            hours: h,
            pieceGrams: p,
            celsius: { value: c, u },
            perSecond: { value: u, u: c },
          });
          expect(() => assessIce(reading, limits)).not.toThrow();
          expect(() => checkIce(reading, limits)).not.toThrow();
        },
      ),
    );
    expect(assess("weight", Number.NaN).verdict).toBe("unclear");
  });
});
