import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { collectRows } from "./feed-fixture.ts";

const minorOf = (price: string, currency = "GBP") =>
  collectRows({ price, currency }).collected.parts[0]?.price;
const faultOf = (price: string, currency = "GBP") =>
  collectRows({ price, currency }).problems.first[0]?.message;

describe("a price", () => {
  // Minor units after ISO 4217: two for GBP and EUR, none for JPY, three for KWD.
  test.each([
    ["12.99", "GBP", 1299],
    ["12,99", "EUR", 1299],
    ["12", "EUR", 1200],
    ["12.5", "EUR", 1250],
    ["0.07", "EUR", 7],
    ["1299", "JPY", 1299],
    ["1299.00", "JPY", 1299],
    ["1.299", "KWD", 1299],
    ["12.9900", "EUR", 1299],
    [" 12.99 ", "gbp", 1299],
  ])("is read in the smallest unit of its currency: %s %s is %d", (price, currency, minor) => {
    expect(minorOf(price, currency)).toEqual({ minor, currency: currency.toUpperCase() });
  });

  test.each([
    ["1.299,00", "EUR", "1299.00 or 1299,00"],
    ["1,299.00", "GBP", "1299.00 or 1299,00"],
    ["1.299", "EUR", "two ways"],
    ["1,299", "GBP", "two ways"],
    ["1.000", "JPY", "Write it as 1299."],
    ["12.995", "GBP", "two ways"],
    ["12.9951", "GBP", "too many decimals"],
    ["12.5", "JPY", "too many decimals"],
    ["£12.99", "GBP", "without a currency sign"],
    ["12.99 GBP", "GBP", "without a currency sign"],
    ["1 299,00", "EUR", "marks between thousands"],
    ["12.", "GBP", "A price is a number"],
    [".99", "GBP", "A price is a number"],
    ["1e3", "GBP", "A price is a number"],
    ["9".repeat(20), "GBP", "too high"],
  ])("that may mean something else is refused with what to write: %s %s", (price, currency, said) => {
    expect(minorOf(price, currency)).toBeUndefined();
    expect(faultOf(price, currency)).toContain(said);
  });

  test("comes back as it was written, for any amount and either mark", () => {
    fc.assert(
      fc.property(fc.nat(1e9), fc.constantFrom(".", ","), (minor, mark) => {
        const digits = String(minor).padStart(3, "0");
        const price = `${digits.slice(0, -2)}${mark}${digits.slice(-2)}`;
        expect(minorOf(price, "EUR")).toEqual({ minor, currency: "EUR" });
      }),
      { numRuns: 50 },
    );
  });
});
