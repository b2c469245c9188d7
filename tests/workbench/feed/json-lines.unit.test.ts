import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { columnNames, createCollector, longestRow, readRows } from "../../../src/workbench/feed/index.ts";
import { collectText, fitsOf, goodRow, placesOf } from "./feed-fixture.ts";

const line = (change: object = {}) => `${JSON.stringify({ ...goodRow, ...change })}\n`;
const good = line();

describe("a feed of JSON lines", () => {
  test("is read like CSV, with numbers as numbers, older numbers as a list, and nothing for null", () => {
    const feed = collectText(
      line({ price: 34.99, stock: 0, minutes: 5, replaces: ["A", "B"], link: null, "Serial From": 7 }),
    );
    expect(feed.problems.total).toBe(0);
    expect(feed.collected.parts).toMatchObject([
      { price: { minor: 3499 }, stock: "out-of-stock", effortMinutes: 5, replaces: ["A", "B"] },
    ]);
    expect(feed.collected.conditions.get(0)).toEqual({ serialFrom: "7" });
  });

  test("has unknown keys named once, and the retailer's own understood", () => {
    const own = new Map([["number", "SKU"] as const]);
    const feed = collectText(line({ SKU: "S1", colour: "w" }) + line({ SKU: "S1", colour: "b" }), { own });
    expect(feed.ignored).toEqual(["number", "colour"]);
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["S1"] });
  });

  test.each([
    ["no JSON", "{oops\n", "not-json"],
    ["a list", "[1]\n", "not-an-object"],
    ["a text", '"row"\n', "not-an-object"],
    ["null", "null\n", "not-an-object"],
    ["an object for a text", line({ name: { toString: "x" } }), "not-text"],
    ["a list for a text", line({ name: ["a"] }), "not-text"],
    ["true for a text", line({ number: true }), "not-text"],
    ["a number that lost digits", good.replace('"LLS-1"', "12345678901234567890"), "not-text"],
    ["a list of numbers", line({ replaces: [1] }), "not-text"],
    ["a key twice", good.replace("{", '{"number":"LLS-9",'), "doubled-key"],
    ["a key twice, once with blanks", good.replace("{", '{"number" : "LLS-9",'), "doubled-key"],
    ["a key twice, once in escapes", good.replace("{", '{"n\\u0075mber":"LLS-9",'), "doubled-key"],
    ["an escaped NUL", line({ name: "Ice\u0000bin" }), "control-character"],
    ["bytes that were no UTF-8", line({ name: "Ice \uFFFD" }), "bad-encoding"],
    ["a field of a megabyte", line({ name: "x".repeat(1_000_000) }), "field-too-long"],
    ["a line of two megabytes", line({ name: "x".repeat(2_000_000) }), "row-too-long"],
    ["no number", line({ number: undefined }), "empty-field"],
  ])("has a row with %s told with its line, and its neighbours kept", (_, broken, code) => {
    const other = line({ model: "WX-2", number: "LLS-2" });
    const feed = collectText(good + broken + other);
    expect(feed.problems.first).toMatchObject([{ code, line: 2 }]);
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["LLS-1"], "WX-2": ["LLS-2"] });
  });

  test("points at the key that is wrong", () => {
    const at = good.indexOf('"price"') + 1;
    expect(placesOf(collectText(line({ price: "1.299,00" })))).toEqual([`1:${at} bad-price`]);
  });

  test("may say the same words as keys and in texts", () => {
    expect(collectText(line({ name: 'a "number": "name":' })).problems.total).toBe(0);
  });

  test("that is cut off inside its last row keeps the others and says so", () => {
    const feed = collectText(good + line({ number: "LLS-2" }).slice(0, 40));
    expect(placesOf(feed)).toEqual(["2:40 cut-off"]);
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["LLS-1"] });
  });

  test("may have keys and values called __proto__ and constructor", () => {
    const row = good
      .replace("{", '{"__proto__":{"polluted":true},"constructor":"x",')
      .replace("WX-1B", "__proto__");
    const feed = collectText(row);
    expect(feed.problems.total).toBe(0);
    expect(feed.ignored).toEqual(["__proto__", "constructor"]);
    expect(feed.collected.models[0]?.code).toBe("__proto__");
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test("without line ends is told once and not kept", () => {
    const collector = createCollector({ few: 3 });
    for (let piece = 0; piece < 40; piece++) collector.push(`{${"x".repeat(longestRow / 8)}`);
    collector.push(`\n${good}`);
    collector.end();
    const feed = collector.finish();
    expect(placesOf(feed)).toEqual(["1:1 row-too-long"]);
    expect(fitsOf(feed)).toEqual({ "WX-1B": ["LLS-1"] });
  });

  test("gives the texts that JSON.stringify wrote, wherever its pieces end", () => {
    const row = fc.record(
      Object.fromEntries(columnNames.map((name) => [name, fc.string({ unit: "grapheme" })])),
    );
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 1, max: 40 }),
        (rows, size) => {
          const text = rows.map((one) => `${JSON.stringify(one)}\r\n`).join("");
          const pieces = Array.from({ length: Math.ceil(text.length / size) }, (_, at) =>
            text.slice(at * size, at * size + size),
          );
          const read: string[][] = [];
          expect(readRows(pieces, (fields) => read.push([...fields])).rows).toBe(rows.length);
          expect(read).toEqual(rows.map((one) => columnNames.map((name) => one[name])));
        },
      ),
    );
  });
});
