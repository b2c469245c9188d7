import { data as iso4217 } from "currency-codes";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readHelpHours } from "../../src/embed/help-hours.ts";
import { sayFacts } from "../../src/embed/said-facts.ts";
import { factBounds, readShopFacts, type ShopFacts } from "../../src/embed/shop-facts.ts";
import { type Asides, asideOf } from "../../src/understanding/index.ts";
import { ownTexts } from "../own-flow.ts";

const read = (json: unknown) => {
  const said: string[] = [];
  return { facts: readShopFacts(json, (sentence) => said.push(sentence)), said };
};

/** Engines differ in spaces that don't break, and in 9:00 or 09:00. */
const plain = (text = "") => text.replace(/[\u00a0\u202f]/g, " ").replace(/\b0(\d:)/g, "$1");

/** What a side question is answered with; a Monday, half past eight in London. */
function answer(entry: string, shop: ShopFacts, language = "en-GB", now = Date.parse("2026-01-12T08:30Z")) {
  const british = ownTexts["en-GB"]?.["asides"] as unknown as Asides;
  const own = (ownTexts[language]?.["asides"] ?? {}) as unknown as Asides;
  const [ours, theirs] = [british[entry] as Asides[string], own[entry]];
  const parts = { ...ours.parts, ...theirs?.parts };
  const asides = { [entry]: { ...ours, ...theirs, facts: { ...ours.facts, ...theirs?.facts }, parts } };
  return plain(asideOf(asides, entry, { facts: sayFacts(shop, parts, language, now) })?.text);
}

const hours = (typed: string) => ({ hours: readHelpHours(typed) ?? [], zone: "UTC" });

describe("a shop's facts", () => {
  test("are read", () => {
    const json = {
      currency: "GBP",
      "call-out": [60, 80],
      "hourly-rate": 48,
      delivery: 4.5,
      "free-delivery-from": 50,
      "return-days": 30,
      "opening-hours": "Mo-Fr 09:00-17:30",
      "time-zone": "Europe/London",
    };
    expect(read(json)).toEqual({
      facts: {
        currency: "GBP",
        money: {
          "call-out": [60, 80],
          "hourly-rate": [48, 48],
          delivery: [4.5, 4.5],
          "free-delivery-from": [50, 50],
        },
        returnDays: 30,
        hours: readHelpHours("Mo-Fr 09:00-17:30"),
        zone: "Europe/London",
      },
      said: [],
    });
    expect(read(undefined)).toEqual({ facts: {}, said: [] });
  });

  test.each([
    ["currency", "pounds", "the code of a currency"],
    ["call-out", "65", "an amount of money"],
    ["call-out", -1, "an amount of money"],
    ["call-out", [80, 60], "the least and the most"],
    ["call-out", [1, 2, 3], "the least and the most"],
    ["call-out", [], "the least and the most"],
    ["hourly-rate", factBounds.money + 1, "an amount of money"],
    ["delivery", { amount: 4 }, "an amount of money"],
    ["free-delivery-from", [40, 50], "an amount of money such as 50"],
    ["return-days", 14.5, "a whole number from 2 to 400"],
    ["return-days", 1, "a whole number"],
    ["opening-hours", "nine to five", "opening hours such as"],
    ["opening-hours", "<script>alert(1)</script>", "opening hours such as"],
    ["time-zone", "Mars/Base", "a time zone such as"],
    ["__proto__", "x", 'there is no "__proto__"'],
    ["call-in", 3, 'there is no "call-in" below "shop". Known are currency, call-out'],
  ])("%s: %j is left, with why in one sentence, and all others hold", (name, value, why) => {
    const json = JSON.parse(
      `{ "return-days": 30, "delivery": 5, "currency": "GBP", "${name}": ${JSON.stringify(value)} }`,
    );
    const { facts, said } = read(name === "currency" ? { "return-days": 30, currency: value } : json);
    expect(said).toEqual([expect.stringContaining(why)]);
    expect(said[0]).toMatch(/It is ignored\.$/);
    expect(facts).toEqual({
      ...(name !== "return-days" && { returnDays: 30 }),
      ...(name !== "currency" && { currency: "GBP" }),
      ...(name !== "currency" && name !== "delivery" && { money: { delivery: [5, 5] } }),
    });
  });

  test("of money need a currency", () => {
    const { facts, said } = read({ "call-out": 65, "return-days": 30 });
    expect(facts).toEqual({ returnDays: 30 });
    expect(said).toEqual([expect.stringContaining("need")]);
  });

  test.each([[null], ["65"], [[65]], [7]])("are none where they are %j", (json) => {
    expect(read(json)).toEqual({ facts: {}, said: [expect.stringContaining('"shop" must be an object')] });
  });

  test("never throw, and never say more than their own numbers, whatever a file holds", () => {
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.constantFrom("call-out", "opening-hours", "currency", "x", "time-zone"),
          fc.jsonValue(),
        ),
        (json) => {
          const { facts } = read(json);
          expect(() => answer("cost-engineer", facts)).not.toThrow();
          expect(() => answer("open-hours", facts)).not.toThrow();
        },
      ),
      { seed: 7 },
    );
  });
});

describe("what a side question says of money and days", () => {
  const money = { "call-out": [65, 65], "hourly-rate": [48.5, 48.5] } as const;

  test("is as it was where the shop gave nothing", () => {
    expect(answer("cost-engineer", {})).toBe(
      "Ask for the call-out charge before they come. It differs from place to place.",
    );
    expect(answer("open-hours", {})).toBe("The shop's contact page says when it's open.");
  });

  test("quotes each fact that the shop gave, in the language's form", () => {
    expect(answer("cost-engineer", { currency: "GBP", money })).toBe(
      "A call-out here costs £65. Work costs £48.50 an hour.",
    );
    expect(answer("cost-engineer", { currency: "USD", money }, "en-US")).toBe(
      "A service call here costs $65. Labor costs $48.50 an hour.",
    );
    expect(answer("cost-engineer", { currency: "EUR", money: { "call-out": [60, 89.9] } })).toBe(
      "A call-out here costs €60.00 to €89.90.",
    );
    expect(answer("return-part", { returnDays: 30 })).toBe(
      "You have 30 days to send a part back. Keep its box until then.",
    );
  });

  test("knows delivery that costs nothing, and from when on", () => {
    const free = { "free-delivery-from": [50, 50] } as const;
    expect(answer("cost-delivery", { currency: "GBP", money: { delivery: [0, 0], ...free } })).toBe(
      "Delivery is free.",
    );
    expect(answer("cost-delivery", { currency: "GBP", money: { delivery: [4, 4], ...free } })).toBe(
      "Delivery costs £4. It's free for orders of £50 or more.",
    );
  });

  test("has a form for every currency of ISO 4217 (npm currency-codes)", () => {
    for (const { code } of iso4217)
      expect(answer("cost-engineer", { currency: code, money })).toMatch(
        /^A call-out here costs .*65.*\. Work costs .*4[89].* an hour\.$/,
      );
  });
});

describe("what a side question says of opening hours", () => {
  test.each([
    [
      "Mo-Fr 09:00-17:30, Sa 10:00-14:00",
      "Monday to Friday from 9:00 to 17:30, and Saturday from 10:00 to 14:00",
    ],
    ["Mo-Su", "every day all day"],
    ["Sa,Su 10:00-14:00", "Saturday and Sunday from 10:00 to 14:00"],
    ["Mo,We,Fr 09:00-12:00", "Monday, Wednesday and Friday from 9:00 to 12:00"],
    [
      "Mo-We,Fr 09:00-12:00 13:00-17:00",
      "Monday to Wednesday and Friday from 9:00 to 12:00 and from 13:00 to 17:00",
    ],
    [
      "Mo-Fr 09:00-15:00, We 12:00-18:00",
      "Monday, Tuesday, Thursday and Friday from 9:00 to 15:00, and Wednesday from 9:00 to 18:00",
    ],
    ["Fr 18:00-24:00", "Friday from 18:00 to midnight"],
    ["Fr 22:00-02:00", "Friday from 22:00 to 2:00"],
    ["Su-Mo 10:00-12:00", "Monday and Sunday from 10:00 to 12:00"],
    [
      "Mo 09:00-12:00, Tu 10:00-12:00, We 11:00-12:00",
      "Monday from 9:00 to 12:00, Tuesday from 10:00 to 12:00, and Wednesday from 11:00 to 12:00",
    ],
  ])("names the days and times of %s", (typed, said) => {
    expect(answer("open-hours", hours(typed))).toContain(`The shop is open ${said}.`);
  });

  test("has the times of American English", () => {
    expect(answer("open-hours", hours("Mo-Fr 09:00-17:30"), "en-US")).toBe(
      "The store is open Monday through Friday from 9:00 AM to 5:30 PM. It's closed now.",
    );
  });

  test("says whether it is open now, by the clock of the shop's time zone", () => {
    const at = (zone: string) => answer("open-hours", { ...hours("Mo-Fr 09:00-17:30"), zone });
    expect(at("Europe/London")).toMatch(/It's closed now\.$/);
    expect(at("Europe/Berlin")).toMatch(/It's open now\.$/);
  });

  test("says so where the shop's clocks show another time", () => {
    const now = Date.parse("2026-01-12T08:30Z");
    const here = new Intl.DateTimeFormat().resolvedOptions().timeZone;
    const there = here === "Asia/Kolkata" ? "Europe/London" : "Asia/Kolkata";
    expect(answer("open-hours", { ...hours("Mo"), zone: there }, "en-GB", now)).toMatch(
      /^By its own clock, the shop is open Monday all day\./,
    );
    expect(answer("open-hours", { ...hours("Mo"), zone: here }, "en-GB", now)).toMatch(/^The shop is open/);
  });
});
