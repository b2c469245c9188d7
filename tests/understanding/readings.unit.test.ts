import { describe, expect, test } from "vitest";
import type { InstrumentName } from "../../src/instruments/index.ts";
import { type Context, understand } from "../../src/understanding/index.ts";
import { ownFlow } from "../own-flow.ts";
import { at, small } from "./small-model.ts";

/** What is to be entered for a sentence typed on 27 November 2026, or null. */
function read(instrument: InstrumentName, sentence: string, about: Partial<Context> = {}) {
  const found = understand(small, sentence, at("a.b", { instrument, ...about })).find(
    (one) => one.kind === "reading",
  );
  return found?.kind === "reading" ? found.entries : null;
}
const american = { region: ownFlow.regions["US"] as Context["region"] };

describe("water and time", () => {
  test.each([
    ["150 ml in 10 seconds", { volume: "150", unit: "ml", seconds: "10" }],
    ["10 secs, 150ml", { volume: "150", unit: "ml", seconds: "10" }],
    ["a quarter of it? no: half a minute gave 300 grams", { volume: "300", unit: "g", seconds: "30" }],
    ["0.2 litres", { volume: "200", unit: "ml" }],
    ["1,5 l in 1 min", { volume: "1500", unit: "ml", seconds: "60" }],
    ["180", { volume: "180", unit: "ml" }],
  ])("“%s”", (sentence, entries) => {
    expect(read("flow", sentence)).toEqual(entries);
  });

  test("cups stay as a cup's marks have them", () => {
    expect(read("flow", "3 1/4 cups", american)).toEqual({ volume: "3 1/4", unit: "us-cup" });
    expect(read("flow", "about 6 fl oz in 10 s", american)).toEqual({
      volume: "6",
      unit: "us-fl-oz",
      seconds: "10",
    });
  });

  test("the house's supply is a filled vessel, or a pressure", () => {
    expect(read("supply", "10 litres in 40 seconds")).toEqual({
      by: "fill",
      vessel: "10",
      fill: "l",
      seconds: "40",
    });
    expect(read("supply", "the gauge says 3 bar")).toEqual({ by: "gauge", pressure: "3", gauge: "bar" });
  });
});

describe("a temperature", () => {
  test.each([
    ["minus 15", { temperature: "-15", unit: "C" }],
    ["-15°C", { temperature: "-15", unit: "C" }],
    ["15 below", { temperature: "-15", unit: "C" }],
    ["5 degrees f", { temperature: "5", unit: "F" }],
    ["the display says -18", { temperature: "-18", unit: "C", with: "display" }],
    [
      "thermometer at minus twelve after 20 minutes",
      { temperature: "-12", unit: "C", with: "thermometer", stood: "20" },
    ],
  ])("“%s”", (sentence, entries) => {
    expect(read("temperature", sentence)).toEqual(entries);
  });

  test("is in the reader's own unit where none is said", () => {
    expect(read("temperature", "about 5", american)).toMatchObject({ unit: "F" });
  });
});

describe("ice", () => {
  test.each([
    ["70 cubes since yesterday", { by: "pieces", amount: "70", hours: "24" }],
    ["12 cubes in 3 hours", { by: "pieces", amount: "12", hours: "3" }],
    ["half a kilo in a day", { by: "weight", amount: "0.5", unit: "kg", hours: "24" }],
    ["2 batches in 90 minutes", { by: "batches", amount: "2", watched: "1.5" }],
  ])("“%s”", (sentence, entries) => {
    expect(read("ice", sentence)).toEqual(entries);
  });

  test("a few cubes are counted and weighed", () => {
    expect(read("cubes", "10 cubes weigh 160 g")).toEqual({ pieces: "10", mass: "160", unit: "g" });
  });
});

describe("when the filter was fitted", () => {
  test.each([
    ["8 months ago", { by: "month", month: "3", year: "2026" }],
    ["last summer", { by: "season", season: "summer", year: "2026" }],
    ["winter", { by: "season", season: "winter", year: "2025" }],
    ["in May", { by: "month", month: "5", year: "2026" }],
    ["december", { by: "month", month: "12", year: "2025" }],
    ["March 2024", { by: "month", month: "3", year: "2024" }],
    ["3 weeks ago", { by: "date", day: "6", month: "11", year: "2026" }],
    ["yesterday", { by: "date", day: "26", month: "11", year: "2026" }],
    ["05/03/25", { by: "date", day: "5", month: "3", year: "2025" }],
    ["2025-03-05", { by: "date", day: "5", month: "3", year: "2025" }],
    ["a year ago", { by: "month", month: "11", year: "2025" }],
    ["when we moved in in june 2022", { by: "since-moving", month: "6", year: "2022" }],
  ])("“%s”", (sentence, entries) => {
    expect(read("filter-age", sentence)).toEqual(entries);
  });

  test("a date is read in the order of the reader's region", () => {
    expect(read("filter-age", "05/03/25", american)).toMatchObject({ day: "3", month: "5" });
  });
});

test("a sentence without a measurement fills in nothing, and a seal is not measured by words", () => {
  for (const instrument of ["flow", "supply", "temperature", "ice", "cubes", "filter-age"] as const)
    expect(read(instrument, "no idea how to do that")).toBeNull();
  expect(read("seal", "12 spots grip")).toBeNull();
});
