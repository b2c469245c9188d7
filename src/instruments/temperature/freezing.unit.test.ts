import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { estimateOf } from "../../measuring/index.ts";
import { freezingTimeRatio } from "./freezing.ts";

/** Plank's whole equation in SI units; shape factors P and R: 1/6 and 1/24 a sphere, 1/4 and 1/16 a long cylinder. */
function plank(
  shape: { a: number; p: number; r: number },
  { density, heat, k, h }: Record<"density" | "heat" | "k" | "h", number>,
  [freezesAt, air]: [number, number],
): number {
  return (
    ((density * heat) / (freezesAt - air)) * ((shape.p * shape.a) / h + (shape.r * shape.a * shape.a) / k)
  );
}

const sphere = { a: 0.07, p: 1 / 6, r: 1 / 24 };
const food = { density: 1000, heat: 250e3, k: 1.2 };
const cylinder = { a: 0.025, p: 1 / 4, r: 1 / 16 };
const water = { density: 917, heat: 333.5e3, k: 2.22, h: 25 };
const iceMinutes = (air: number) => plank(cylinder, water, [0, air]) / 60;

const ratioAt = (celsius: number, target = -18) => freezingTimeRatio({ value: celsius, u: 0 }, target, 0.98);

describe("Plank's equation, as worked in these tests", () => {
  test("a sphere of 7 cm takes 2603 s with h = 50 and 1.002 h with h = 30 W/m²K (course problem, W9)", () => {
    expect(plank(sphere, { ...food, h: 50 }, [-1.25, -40])).toBeCloseTo(2603, 0);
    expect(plank(sphere, { ...food, h: 30 }, [-1.25, -40]) / 3600).toBeCloseTo(1.002, 3);
  });

  test.each([
    [-18, 75.8],
    [-15, 90.9],
    [-12, 113.7],
    [-9, 151.5],
    [-6, 227.3],
  ])("a cylinder of ice, 25 mm, freezes in air of %d °C in %d min (W11)", (air, minutes) => {
    expect(iceMinutes(air)).toBeCloseTo(minutes, 1);
  });
});

describe("how many times as long a tray takes", () => {
  test.each([
    [-18, 1],
    [-15, 1.2],
    [-12, 1.5],
    [-9, 2],
    [-6, 3],
    [-24, 0.75],
  ])("at %d °C it is %d times the time at −18 °C (W11)", (celsius, times) => {
    expect(ratioAt(celsius)?.value).toBeCloseTo(times, 9);
  });

  test("it is the ratio of Plank's whole times, whatever shape, size and air", () => {
    const cold = fc.double({ min: -60, max: -0.5, noNaN: true });
    const size = fc.double({ min: 0.005, max: 0.1, noNaN: true });
    const air = fc.double({ min: 5, max: 100, noNaN: true });
    fc.assert(
      fc.property(cold, cold, size, air, (celsius, target, a, h) => {
        const time = (at: number) => plank({ ...cylinder, a }, { ...water, h }, [0, at]);
        const expected = time(celsius) / time(target);
        expect((ratioAt(celsius, target)?.value ?? 0) / expected).toBeCloseTo(1, 9);
      }),
    );
  });

  test("at 0 °C and above water never freezes", () => {
    for (const celsius of [0, 0.1, 20]) expect(ratioAt(celsius)).toBeNull();
    expect(ratioAt(Number.NaN)).toBeNull();
  });

  test("−9 °C, give or take 1 K, is between 18/9.98 and 18/8.02 times as long", () => {
    const { range } = freezingTimeRatio(estimateOf(-9, { evenly: [1] }), -18, 0.98) ?? {};
    expect(range?.low).toBeCloseTo(18 / 9.98, 3);
    expect(range?.high).toBeCloseTo(18 / 8.02, 3);
  });

  test("where the temperature may be 0 °C there is no longest time", () => {
    const { value, range } = freezingTimeRatio(estimateOf(-1, { evenly: [2] }), -18, 0.98) ?? {};
    expect(value).toBe(18);
    expect(range?.low).toBeCloseTo(18 / 2.96, 3);
    expect(range?.high).toBeNull();
  });

  test("the range contains the value, and warmer never takes less time", () => {
    const celsius = fc.double({ min: -60, max: 10, noNaN: true });
    const error = fc.double({ min: 0, max: 5, noNaN: true });
    fc.assert(
      fc.property(celsius, celsius, error, (a, b, half) => {
        const [cold, warm] = [Math.min(a, b), Math.max(a, b)].map((value) =>
          freezingTimeRatio(estimateOf(value, { evenly: [half] }), -18, 0.98),
        );
        for (const ratio of [cold, warm]) {
          if (!ratio) continue;
          expect(ratio.range.low).toBeLessThanOrEqual(ratio.value);
          expect(ratio.range.high ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(ratio.value);
        }
        if (warm) expect(warm.value).toBeGreaterThanOrEqual(cold?.value ?? Number.NaN);
      }),
    );
  });

  test("no number whatever throws", () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), (value, u, target) => {
        expect(() => freezingTimeRatio({ value, u }, target, 0.98)).not.toThrow();
      }),
    );
  });
});
