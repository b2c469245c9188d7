import { describe, expect, test } from "vitest";
import { fileSchemas, type Region, regionIn } from "../../src/guide/index.ts";
import { ownFlow } from "../own-flow.ts";

const { regions } = ownFlow;
const { GB, US } = regions as { GB: Region; US: Region };
const DE: Region = { ...GB, "default-for": ["de"] };

describe("the region of a language's readers", () => {
  test.each([
    ["the one that its tag names", "en-US", US],
    ["the one that its tag names, however it is written", "en-us", US],
    ["the one that its tag names, whatever the language", "de-US", US],
    ["the default of the language where the tag names none", "de", DE],
    ["the default of the language where the tag names one that we don't have", "de-AT", DE],
    ["the default of English for Australia, which has no file", "en-AU", GB],
    ["found behind a script, too", "zh-Hant-US", US],
    ["Great Britain where nobody says anything", "ja", GB],
    ["never a property of all objects", "en-constructor", GB],
  ])("is %s: %s", (_, tag, region) => {
    expect(regionIn({ US, DE, GB }, tag)).toBe(region);
  });
});

describe("the file of a region", () => {
  const { region } = fileSchemas;
  const units = (changed: object) => ({ ...GB, units: { ...GB.units, ...changed } });

  test("is taken with all that it says, and with no law at all", () => {
    for (const each of [GB, US, { ...US, statutes: {} }]) expect(region.safeParse(each).success).toBe(true);
  });

  test.each([
    ["no unit to measure in", units({ pressure: [] })],
    ["a unit of something else", units({ pressure: ["bar", "kg"] })],
    ["more units than there are", units({ temperature: ["C", "F", "C"] })],
    ["a kind of measure that nobody asks for", units({ length: ["m"] })],
    ["the year in the middle", { ...GB, "date-order": "day year month" }],
    ["a law about something that nobody measures", { ...GB, statutes: { noise: { limit: "a", says: "b" } } }],
    ["a language with its country", { ...GB, "default-for": ["en-GB"] }],
  ])("is refused with %s", (_, data) => {
    expect(region.safeParse(data).success).toBe(false);
  });
});

test("the units, the order of a date and the law are a country's", () => {
  // Common practice, no source.
  expect([GB.units.volume[0], US.units.volume[0]]).toEqual(["ml", "us-fl-oz"]);
  expect([GB.units.temperature[0], US.units.temperature[0]]).toEqual(["C", "F"]);
  expect([GB["date-order"], US["date-order"]]).toEqual(["day month year", "month day year"]);
  expect([GB.statutes, US.statutes].map((one) => one["supply-pressure"]?.says)).toEqual([
    "below-statutory",
    "very-low",
  ]);
});
