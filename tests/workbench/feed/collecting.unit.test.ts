import { describe, expect, test } from "vitest";
import { countMissingKinds, createCollector } from "../../../src/workbench/feed/index.ts";
import { collectRows, collectText, fitsOf, goodRow, placesOf, toCsv } from "./feed-fixture.ts";

describe("parts that stand in many rows", () => {
  test("are one part, whichever model's row comes first", () => {
    const feed = collectRows({ model: "WX-1" }, { model: "WX-2" }, { model: "WX-1", number: "LLS-2" });
    expect(fitsOf(feed)).toEqual({ "WX-1": ["LLS-1", "LLS-2"], "WX-2": ["LLS-1"] });
    expect(feed.collected.parts).toHaveLength(2);
    expect(feed.problems.total).toBe(0);
  });

  test.each([
    ["name", { name: "Another bin" }],
    ["price", { price: "35.99" }],
    ["currency", { currency: "EUR" }],
    ["kind", { kind: "door-seal" }],
    ["link", { link: "https://a.example/2" }],
    ["replaces", { replaces: "OLD-1" }],
  ])("count as first told where a later row has another %s, and both lines are named", (column, change) => {
    const feed = collectRows({ model: "WX-1" }, { model: "WX-2", ...change });
    expect(feed.problems.first).toMatchObject([{ code: "part-conflict", line: 3 }]);
    expect(feed.problems.first[0]?.message).toContain(`"${column}"`);
    expect(feed.problems.first[0]?.message).toContain("line 2");
    expect(feed.collected.parts).toMatchObject([
      { name: "Ice bin", price: { minor: 3499, currency: "GBP" } },
    ]);
    expect(fitsOf(feed)).toEqual({ "WX-1": ["LLS-1"], "WX-2": ["LLS-1"] });
    expect(feed.figures.conflicts).toBe(1);
  });

  test("may be written with other blanks or another decimal mark", () => {
    const feed = collectRows({}, { model: "WX-2", number: " LLS-1 ", price: "34,99", name: "Ice bin " });
    expect(feed.problems.total).toBe(0);
    expect(feed.collected.parts).toHaveLength(1);
  });

  test("are judged once: what is left out of a part is told for its first row only", () => {
    const unsafe = { link: "javascript:alert(1)" };
    expect(placesOf(collectRows({ ...unsafe }, { ...unsafe, model: "WX-2" }))).toEqual(["2:61 unsafe-link"]);
  });
});

describe("a model, a part and a condition", () => {
  test("that stand there twice are kept once and counted", () => {
    const feed = collectRows({}, {}, { variant: "A" }, { variant: "A" }, { variant: "B" });
    expect(feed.figures).toMatchObject({ fitments: 3, duplicates: 2, conditions: 2, rowsUsed: 5 });
    expect(feed.problems.total).toBe(0);
  });

  test("keep the order of the feed, model by model", () => {
    const rows = ["3 1", "1 2", "3 2", "2 9", "1 1", "3 0"].map((pair) => {
      const [model, number] = pair.split(" ");
      return { model: `WX-${model}`, number: `N${number}` };
    });
    expect(fitsOf(collectRows(...rows))).toEqual({
      "WX-3": ["N1", "N2", "N0"],
      "WX-1": ["N2", "N1"],
      "WX-2": ["N9"],
    });
  });
});

describe("models", () => {
  test("of one brand that differ by separators and case only are one, as the first is written", () => {
    const feed = collectRows({ model: "WX-1B" }, { model: "wx 1b", number: "LLS-2" }, { model: "WX1B" });
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["LLS-1", "LLS-2"] });
    expect(feed.figures.duplicates).toBe(1);
  });

  test("of two brands stay two, though their codes sound alike", () => {
    const feed = collectRows({ model: "WX-1B" }, { model: "WX1B", brand: "Tarnhoxby", number: "LLS-2" });
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["LLS-1"], WX1B: ["LLS-2"] });
  });

  test("never take a part that the feed gives to another brand's machine of the same code", () => {
    const feed = collectRows({}, { brand: "Tarnhoxby", number: "LLS-2" });
    expect(feed.problems.first).toMatchObject([{ code: "brand-conflict", line: 3, found: "Tarnhoxby" }]);
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["LLS-1"] });
  });

  test("may tell their brand and machine in any of their rows", () => {
    const feed = collectRows({ brand: "", machine: "" }, {});
    expect(feed.collected.models).toMatchObject([{ brand: "Wexmarrow", machine: "french-door" }]);
  });

  test("of a feed without brands take what the shop says for all of them", () => {
    const text = toCsv([goodRow]).replace("brand", "maker").replace("machine", "type");
    const defaults = { brand: "Nettlewick", machine: "built-in" };
    expect(collectText(text, { defaults }).collected.models).toMatchObject([defaults]);
    expect(collectText(text).collected.models).toMatchObject([{ brand: "–", machine: "fridge-freezer" }]);
  });

  test("are not known by a row whose part cannot be used", () => {
    expect(collectRows({}, { model: "WX-2", price: "free" }).collected.models).toHaveLength(1);
  });
});

describe("figures", () => {
  test("say for how many models the feed has no part of a kind", () => {
    const { collected } = collectRows(
      { model: "WX-1", kind: "water-filter", number: "F" },
      { model: "WX-2" },
      { model: "WX-2", kind: "water-filter", number: "F" },
      { model: "WX-2", kind: "water-filter", number: "G" },
      { model: "WX-3" },
    );
    expect(countMissingKinds(collected, ["water-filter", "ice-bin", "tank-pump"])).toEqual({
      "water-filter": 1,
      "ice-bin": 1,
      "tank-pump": 3,
    });
  });

  test("say how many rows were read while reading goes on", () => {
    const collector = createCollector({ few: 3 });
    const [heading, row] = toCsv([goodRow]).split("\n");
    collector.push(`${heading}\n${row}\n${row}`);
    expect(collector.rows).toBe(1);
    collector.end();
    expect(collector.rows).toBe(2);
  });
});
