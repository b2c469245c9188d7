import fc from "fast-check";
import Qty from "js-quantities";
import { describe, expect, test } from "vitest";
import {
  fromCelsius,
  fromMillilitres,
  type TemperatureUnit,
  temperatureDifference,
  toCelsius,
  toMillilitres,
  type VolumeUnit,
} from "../../src/measurement/index.ts";

const volumeUnits: VolumeUnit[] = ["ml", "us-fl-oz", "us-cup", "g"];
const temperatureUnits: TemperatureUnit[] = ["C", "F"];
// Hundredths, as people type them; the library cannot read numbers as small as 5e-324.
const amount = fc.integer({ min: 0, max: 1e6 }).map((hundredths) => hundredths / 100);
const temperature = fc.integer({ min: -10000, max: 15000 }).map((hundredths) => hundredths / 100);

describe("volumes", () => {
  test("a US fluid ounce is 29.57353 ml and a US cup 236.5882 ml (NIST SP 811 App. B.8)", () => {
    expect(toMillilitres(1, "us-fl-oz")).toBe(29.57353);
    expect(toMillilitres(1, "us-cup")).toBe(236.5882);
  });

  test("150 ml is 5.0721 US fl oz and 0.63401 US cup (worked example W1)", () => {
    expect(fromMillilitres(150, "us-fl-oz")).toBeCloseTo(5.0721, 4);
    expect(fromMillilitres(150, "us-cup")).toBeCloseTo(0.63401, 5);
  });

  test("eight fluid ounces fill a cup to the last digit that NIST SP 811 gives", () => {
    expect(toMillilitres(8, "us-fl-oz")).toBeCloseTo(toMillilitres(1, "us-cup"), 3);
  });

  test("a gram of water is taken as a millilitre (from memory, no source)", () => {
    expect(toMillilitres(150, "g")).toBe(150);
    expect(fromMillilitres(150, "g")).toBe(150);
  });

  test("any amount agrees with the js-quantities library to five digits", () => {
    for (const [unit, theirs] of [
      ["us-fl-oz", "floz"],
      ["us-cup", "cup"],
    ] as const) {
      fc.assert(
        fc.property(amount, (value) => {
          const expected = new Qty(value, theirs).to("ml").scalar;
          expect(Math.abs(toMillilitres(value, unit) - expected)).toBeLessThanOrEqual(expected * 1e-5);
        }),
      );
    }
  });

  test("every unit comes back from millilitres as it was", () => {
    fc.assert(
      fc.property(amount, fc.constantFrom(...volumeUnits), (value, unit) => {
        expect(fromMillilitres(toMillilitres(value, unit), unit)).toBeCloseTo(value, 8);
      }),
    );
  });
});

describe("temperatures", () => {
  test("40 °F is 4.444 °C and −18 °C is −0.4 °F (worked example W1)", () => {
    expect(toCelsius(40, "F")).toBeCloseTo(4.444, 3);
    expect(fromCelsius(-18, "C")).toBe(-18);
    expect(fromCelsius(-18, "F")).toBeCloseTo(-0.4, 10);
  });

  test("0 °F, the freezer target of USDA FSIS, is −17.8 °C", () => {
    expect(toCelsius(0, "F")).toBeCloseTo(-17.8, 1);
  });

  test("a difference scales by 1.8 and has no offset (NIST SP 811 B.8, from memory)", () => {
    expect(temperatureDifference(0, "F")).toBe(0);
    expect(temperatureDifference(9, "F")).toBe(5);
    expect(temperatureDifference(9, "C")).toBe(9);
  });

  test("any temperature and any difference agree with the js-quantities library", () => {
    fc.assert(
      fc.property(temperature, (value) => {
        expect(toCelsius(value, "F")).toBeCloseTo(new Qty(value, "tempF").to("tempC").scalar, 8);
        expect(temperatureDifference(value, "F")).toBeCloseTo(new Qty(value, "degF").to("degC").scalar, 8);
      }),
    );
  });

  test("every unit comes back from Celsius as it was", () => {
    fc.assert(
      fc.property(temperature, fc.constantFrom(...temperatureUnits), (value, unit) => {
        expect(fromCelsius(toCelsius(value, unit), unit)).toBeCloseTo(value, 8);
      }),
    );
  });
});
