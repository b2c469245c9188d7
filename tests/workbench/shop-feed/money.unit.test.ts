import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decimalOf, readMoney } from "../../../src/workbench/shop-feed/index.ts";

describe("a price as shops write it", () => {
  test.each<[written: string, decimal: "comma" | "dot" | null, currency: string, price: string]>([
    ["12,90 €", null, "", "12.90 EUR"],
    ["1.299,00", "comma", "EUR", "1299.00 EUR"],
    ["$1,299.00", "dot", "USD", "1299.00 USD"],
    ["1.299", "comma", "EUR", "1299.00 EUR"],
    ["£ 1,299", "dot", "", "1299.00 GBP"],
    ["12.90 EUR", null, "", "12.90 EUR"],
    ["EUR 12.9", null, "", "12.90 EUR"],
    ["1 299,00 €", "comma", "", "1299.00 EUR"],
    ["1\u00A0299,00 €", "comma", "", "1299.00 EUR"],
    ["1'299.50", "dot", "CHF", "1299.50 CHF"],
    ["12,- €", null, "", "12.00 EUR"],
    ["1,234,567.00", null, "GBP", "1234567.00 GBP"],
    ["149 kr", null, "SEK", "149.00 SEK"],
    ["1500", null, "JPY", "1500 JPY"],
    ["34.990 ", "comma", "KWD", "34990.000 KWD"],
  ])("is read: %s", (written, decimal, currency, price) => {
    const read = readMoney(written, decimal, currency);
    expect("fault" in read ? read.fault : `${read.price} ${read.currency}`).toBe(price);
  });

  test.each<[written: string, decimal: "comma" | "dot" | null, currency: string, why: RegExp]>([
    ["1.299", null, "EUR", /two ways/],
    ["12,90", "dot", "EUR", /two ways/],
    ["1.29,00.5", null, "EUR", /two ways/],
    ["$12.90", null, "", /several currencies/],
    ["12.90", null, "", /--currency/],
    ["12,90 €", null, "GBP", /not in GBP/],
    ["$12.90", null, "GBP", /not in GBP/],
    ["0,00", null, "EUR", /nothing/],
    ["12.995", "dot", "EUR", /two ways/],
    ["on request", null, "EUR", /no number/],
    ["-5", null, "EUR", /no number/],
    ["1.2990", null, "EUR", /too many decimals/],
  ])("is refused where it may be another one: %s", (written, decimal, currency, why) => {
    expect(readMoney(written, decimal, currency)).toEqual({ fault: expect.stringMatching(why) });
  });

  test("of any size comes back as it was written, in both ways of writing", () => {
    const cents = fc.integer({ min: 1, max: 99_999_999 });
    fc.assert(
      fc.property(cents, fc.constantFrom("comma" as const, "dot" as const), (minor, decimal) => {
        const whole = String(Math.floor(minor / 100)).replace(
          /\B(?=(\d{3})+$)/g,
          decimal === "comma" ? "." : ",",
        );
        const written = `${whole}${decimal === "comma" ? "," : "."}${String(minor % 100).padStart(2, "0")}`;
        expect(readMoney(written, decimal, "EUR")).toEqual({
          price: (minor / 100).toFixed(2),
          currency: "EUR",
        });
      }),
    );
  });
});

describe("the decimal sign of a column", () => {
  test.each([
    [["12,90", "1.299,00", "1.299"], "comma"],
    [["12.90", "1,299"], "dot"],
    [["1.299", "2.500"], null],
    [["12,90", "12.90"], null],
    [[], null],
  ])("%j", (cells, decimal) => {
    expect(decimalOf(cells)).toBe(decimal);
  });
});
