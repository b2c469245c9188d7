import fc from "fast-check";
import Qty from "js-quantities";
import { describe, expect, test } from "vitest";
import {
  fromCelsius,
  fromGrams,
  fromKilopascals,
  fromMillilitres,
  type MassUnit,
  type PressureUnit,
  type TemperatureUnit,
  toCelsius,
  toGrams,
  toKilopascals,
  toMillilitres,
  type VolumeUnit,
} from "../../src/measuring/index.ts";

const volumeUnits: VolumeUnit[] = ["ml", "us-fl-oz", "us-cup", "g", "l", "us-qt", "us-gal", "uk-pint"];
const pressureUnits: PressureUnit[] = ["kPa", "bar", "psi"];
const massUnits: MassUnit[] = ["g", "kg", "oz", "lb"];
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

  test("a gram of water is taken as a millilitre (common practice, no source)", () => {
    expect(toMillilitres(150, "g")).toBe(150);
    expect(fromMillilitres(150, "g")).toBe(150);
  });

  test("a US gallon is 3.785412 l (NIST SP 811 App. B.8) and has four quarts, sixteen cups and 128 fl oz", () => {
    expect(toMillilitres(1, "us-gal")).toBe(3785.412);
    expect(toMillilitres(4, "us-qt")).toBeCloseTo(3785.412, 6);
    expect(toMillilitres(16, "us-cup")).toBeCloseTo(3785.412, 2);
    expect(toMillilitres(128, "us-fl-oz")).toBeCloseTo(3785.412, 2);
  });

  test("eight UK pints are a UK gallon of 4.54609 l (NIST SP 811 App. B.8), a pint 568.26125 ml", () => {
    expect(toMillilitres(8, "uk-pint")).toBeCloseTo(4546.09, 9);
    // Twenty UK fluid ounces of 28.41306 ml, same table.
    expect(toMillilitres(1, "uk-pint")).toBeCloseTo(20 * 28.41306, 3);
  });

  test("any amount agrees with the js-quantities library to five digits", () => {
    for (const [unit, theirs] of [
      ["us-fl-oz", "floz"],
      ["us-cup", "cup"],
      ["l", "l"],
      ["us-qt", "qt"],
      ["us-gal", "gal"],
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

describe("pressures", () => {
  test("25 psi is 172.369 kPa, 80 psi 551.581 kPa (worked example W1)", () => {
    expect(toKilopascals(25, "psi")).toBeCloseTo(172.369, 3);
    expect(toKilopascals(80, "psi")).toBeCloseTo(551.581, 3);
  });

  test("7 m of water is 68.647 kPa, 9.956 psi or 0.7 bar; 10 m is 14.223 psi (worked example W1)", () => {
    const metre = 9.80665; // kPa per metre of water, standard gravity (CGPM 1901)
    expect(fromKilopascals(7 * metre, "psi")).toBeCloseTo(9.956, 3);
    expect(fromKilopascals(10 * metre, "psi")).toBeCloseTo(14.223, 3);
    expect(fromKilopascals(7 * metre, "bar")).toBeCloseTo(0.7, 1);
  });

  test("any pressure agrees with the js-quantities library to six digits", () => {
    fc.assert(
      fc.property(amount, fc.constantFrom(...pressureUnits), (value, unit) => {
        const expected = new Qty(value, unit).to("kPa").scalar;
        expect(Math.abs(toKilopascals(value, unit) - expected)).toBeLessThanOrEqual(expected * 1e-6);
      }),
    );
  });

  test("every unit comes back from kilopascals as it was", () => {
    fc.assert(
      fc.property(amount, fc.constantFrom(...pressureUnits), (value, unit) => {
        expect(fromKilopascals(toKilopascals(value, unit), unit)).toBeCloseTo(value, 8);
      }),
    );
  });
});

describe("masses", () => {
  test("a pound is 453.59237 g, exactly (NIST SP 811 App. B.8), and has 16 ounces", () => {
    expect(toGrams(1, "lb")).toBe(453.59237);
    expect(toGrams(16, "oz")).toBe(453.59237);
    expect(fromGrams(500, "kg")).toBe(0.5);
  });

  test("any mass agrees with the js-quantities library to six digits", () => {
    fc.assert(
      fc.property(amount, fc.constantFrom(...massUnits), (value, unit) => {
        const expected = new Qty(value, unit).to("g").scalar;
        expect(Math.abs(toGrams(value, unit) - expected)).toBeLessThanOrEqual(expected * 1e-6);
      }),
    );
  });

  test("every unit comes back from grams as it was", () => {
    fc.assert(
      fc.property(amount, fc.constantFrom(...massUnits), (value, unit) => {
        expect(fromGrams(toGrams(value, unit), unit)).toBeCloseTo(value, 8);
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

  test("any temperature agrees with the js-quantities library", () => {
    fc.assert(
      fc.property(temperature, (value) => {
        expect(toCelsius(value, "F")).toBeCloseTo(new Qty(value, "tempF").to("tempC").scalar, 8);
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
