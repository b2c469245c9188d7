import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assessTemperature, checkTemperature, type TemperatureReading } from "../../src/measurement/index.ts";
import { temperatureLimits as limits } from "./example-limits.ts";

const reading = (value: number, more: Partial<TemperatureReading> = {}): TemperatureReading => ({
  kind: "temperature",
  value,
  unit: "C",
  with: "thermometer",
  ...more,
});

describe("judging a freezer temperature", () => {
  test("0 °F is −17.8 °C (USDA FSIS) and cold enough for a limit of −15 °C", () => {
    const { celsius, verdict } = assessTemperature(reading(0, { unit: "F" }), limits);
    expect(celsius.value).toBeCloseTo(-17.8, 1);
    expect(verdict).toBe("passes");
  });

  test("a thermometer good to ±1 K has standard uncertainty 1/√3 K (JCGM 100 4.3.7), in either unit", () => {
    expect(assessTemperature(reading(-18), limits).celsius.u).toBeCloseTo(0.57735, 5);
    expect(assessTemperature(reading(0, { unit: "F" }), limits).celsius.u).toBeCloseTo(0.57735, 5);
  });

  test("the band is the limit with 1.645 u on each side, and only within it is the verdict unclear", () => {
    const { band } = assessTemperature(reading(-15), limits);
    expect(band.low).toBeCloseTo(-15 - 1.645 * 0.57735, 4);
    expect(band.high).toBeCloseTo(-15 + 1.645 * 0.57735, 4);
    expect(assessTemperature(reading(-16), limits).verdict).toBe("passes");
    expect(assessTemperature(reading(-15.5), limits).verdict).toBe("unclear");
    expect(assessTemperature(reading(-14), limits).verdict).toBe("fails");
  });

  test("the display, which errs more, needs more distance from the limit than a thermometer", () => {
    expect(assessTemperature(reading(-16.5), limits).verdict).toBe("passes");
    expect(assessTemperature(reading(-16.5, { with: "display" }), limits).verdict).toBe("unclear");
  });

  test("colder is never judged worse", () => {
    const rank = { fails: 0, unclear: 1, passes: 2 };
    const value = fc.double({ min: -60, max: 60, noNaN: true });
    fc.assert(
      fc.property(value, value, fc.constantFrom("C", "F"), (a, b, unit) => {
        const colder = assessTemperature(reading(Math.min(a, b), { unit }), limits).verdict;
        const warmer = assessTemperature(reading(Math.max(a, b), { unit }), limits).verdict;
        expect(rank[colder]).toBeGreaterThanOrEqual(rank[warmer]);
      }),
    );
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
