import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  fromCelsius,
  fromGrams,
  fromKilopascals,
  fromMillilitres,
  type MassUnit,
  type PressureUnit,
  readNumber,
  type TemperatureUnit,
  toCelsius,
  toGrams,
  toKilopascals,
  toMillilitres,
  type VolumeUnit,
} from "../../src/measuring/index.ts";
import { createNumbers } from "../../src/turn/index.ts";

// The two languages of the texts, and others with a decimal comma, with digits of their own, or from right to left.
const languages = ["en-GB", "en-US", "de-DE", "fr-FR", "pl-PL", "ar-EG", "fa-IR", "he-IL"];

describe.each(languages)("numbers in %s", (language) => {
  const show = createNumbers(language);

  test("are read again as they were shown, whatever their size and decimals", () => {
    fc.assert(
      fc.property(fc.integer({ min: -5_000_000, max: 5_000_000 }), fc.nat(2), (cents, digits) => {
        const value = Number((cents / 10 ** digits).toFixed(digits)) + 0;
        expect(readNumber(show(value, digits))).toEqual({ kind: "value", value });
      }),
    );
  });

  test("show a reading in the unit in which it was typed, whatever is kept of it", () => {
    const roundTrips: [name: string, there: (value: number) => number][] = [
      ...(["ml", "g", "l", "us-fl-oz", "us-cup", "us-qt", "us-gal", "uk-pint"] as VolumeUnit[]).map(
        (unit): [string, (value: number) => number] => [
          unit,
          (value) => fromMillilitres(toMillilitres(value, unit), unit),
        ],
      ),
      ...(["g", "kg", "oz", "lb"] as MassUnit[]).map((unit): [string, (value: number) => number] => [
        unit,
        (value) => fromGrams(toGrams(value, unit), unit),
      ]),
      ...(["psi", "bar", "kPa"] as PressureUnit[]).map((unit): [string, (value: number) => number] => [
        unit,
        (value) => fromKilopascals(toKilopascals(value, unit), unit),
      ]),
      ...(["C", "F"] as TemperatureUnit[]).map((unit): [string, (value: number) => number] => [
        unit,
        (value) => fromCelsius(toCelsius(value, unit), unit),
      ]),
    ];
    fc.assert(
      fc.property(
        fc.integer({ min: -9_999, max: 9_999 }),
        fc.constantFrom(...roundTrips),
        (tenths, [, there]) => {
          const typed = show(tenths / 10, 1);
          const read = readNumber(typed);
          if (read.kind !== "value") throw new Error(`${typed} was not read`);
          expect(show(there(read.value), 1)).toBe(typed);
        },
      ),
    );
  });
});
