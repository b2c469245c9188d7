import { data } from "currency-codes";
import { describe, expect, test } from "vitest";
import { minorDigits } from "../../src/catalogue/index.ts";

// Metals, bond units, funds' units and test codes: the list has "N.A." for their smallest unit, and nobody pays in them.
const notMoney = "XAG XAU XBA XBB XBC XBD XDR XPD XPT XSU XTS XUA XXX".split(" ");

describe("the smallest unit of a currency", () => {
  test("is that of ISO 4217's list one, as the package currency-codes has it", () => {
    const money = data.filter(({ code }) => !notMoney.includes(code));
    expect(money.length).toBeGreaterThan(150);
    expect(money.map(({ code }) => [code, minorDigits(code)])).toEqual(
      money.map(({ code, digits }) => [code, digits]),
    );
  });

  test("is kept where engines show fewer decimals, because small coins are out of use", () => {
    expect(["HUF", "IDR", "COP", "PKR"].map(minorDigits)).toEqual([2, 2, 2, 2]);
  });

  test("is a hundredth for a code that nobody has published", () => {
    expect(minorDigits("QQQ")).toBe(2);
  });
});
