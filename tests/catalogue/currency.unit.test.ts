import { describe, expect, test } from "vitest";
import { minorDigits } from "../../src/catalogue/index.ts";

describe("the smallest unit of a currency", () => {
  // ISO 4217, list one; from memory.
  test.each([
    ["GBP", 2],
    ["USD", 2],
    ["EUR", 2],
    ["HUF", 2],
    ["JPY", 0],
    ["KRW", 0],
    ["ISK", 0],
    ["KWD", 3],
    ["TND", 3],
  ])("of %s is one of ten to the %d", (currency, digits) => {
    expect(minorDigits(currency)).toBe(digits);
  });

  test("is what Intl says, but for currencies of which it takes what is in use (Unicode CLDR) for the unit", () => {
    const others = Intl.supportedValuesOf("currency").filter((currency) => {
      const { maximumFractionDigits } = new Intl.NumberFormat("en", {
        style: "currency",
        currency,
      }).resolvedOptions();
      return maximumFractionDigits !== minorDigits(currency);
    });
    expect(others.every((currency) => minorDigits(currency) >= 2 || currency === "ISK")).toBe(true);
    for (const currency of ["GBP", "USD", "EUR", "CHF", "SEK", "PLN", "JPY", "KWD"])
      expect(others).not.toContain(currency);
  });
});
