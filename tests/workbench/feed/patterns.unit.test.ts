import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  createCollector,
  expandFitment,
  type FeedLimits,
  UnusableFeed,
} from "../../../src/workbench/feed/index.ts";
import { collectRows, collectText, fitsOf, goodRow, toCsv } from "./feed-fixture.ts";

const codes = [
  "WXM 430A",
  "WXM 431A",
  "WXM 43",
  "WXM 431B",
  "WXM 439A",
  "WXM 43AA",
  "WXM 4300A",
  "TX 431A",
  "WXN 1",
];
const sorted = (list: readonly string[]) =>
  [...new Set(list)]
    .map((code) => ({ code, key: code.replaceAll(" ", "") }))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
const models = sorted(codes);
const expand = (pattern: string, among = models, most?: number) => {
  const found = expandFitment(pattern, among, most);
  return "code" in found ? found.code : found.map(({ code }) => code);
};

describe("a pattern", () => {
  test.each([
    ["WXM 43*", ["WXM 43", "WXM 4300A", "WXM 430A", "WXM 431A", "WXM 431B", "WXM 439A", "WXM 43AA"]],
    ["wxm-43?a", ["WXM 430A", "WXM 431A", "WXM 439A", "WXM 43AA"]],
    ["WX*1*", ["WXM 431A", "WXM 431B", "WXN 1"]],
    ["WXM 430A..WXM 439A", ["WXM 430A", "WXM 431A", "WXM 439A"]],
    ["WXM431A..WXM-435A", ["WXM 431A"]],
    ["WXM 431A..WXM 431A", ["WXM 431A"]],
  ])("means models by their codes, separators and case aside: %s", (pattern, found) => {
    expect(expand(pattern)).toEqual(found);
  });

  test.each([
    ["*", "bad-pattern"],
    ["W*", "bad-pattern"],
    ["?X 431A", "bad-pattern"],
    ["WXM 430A..", "bad-pattern"],
    ["..WXM 430A", "bad-pattern"],
    ["A1..A2..A3", "bad-pattern"],
    ["WXM 430A..WXM 439B", "bad-pattern"],
    ["WXM 430A..WXM 1439A", "bad-pattern"],
    ["WX1A2..WX2A3", "bad-pattern"],
    ["WXM 439A..WXM 430A", "bad-pattern"],
    ["WXM 43?..WXM 44?", "bad-pattern"],
    ["WXMA..WXMB", "bad-pattern"],
    ["QQ*", "pattern-without-model"],
    ["WXM 500A..WXM 599A", "pattern-without-model"],
  ])("that means nothing is a problem: %s is a %s", (pattern, code) => {
    expect(expand(pattern)).toBe(code);
  });

  test("that means more models than the bound is a problem, one that means as many is none", () => {
    expect(expand("WXM 43*", models, 6)).toBe("pattern-too-wide");
    expect(expand("WXM 43*", models, 7)).toHaveLength(7);
  });

  // The reference: a regular expression over all keys.
  test("means what a regular expression finds", () => {
    const sign = fc.constantFrom("A", "B", "1", "*", "?");
    const key = fc.string({ unit: fc.constantFrom("A", "B", "1"), minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 6 }), fc.array(key, { maxLength: 40 }), (signs, keys) => {
        const pattern = `A1${signs.join("")}*`;
        const among = sorted(keys.map((one) => `A1${one}`));
        const form = new RegExp(`^${pattern.replaceAll("*", ".*").replaceAll("?", ".")}$`);
        const wanted = among.filter(({ key: one }) => form.test(one)).map(({ code }) => code);
        expect(expand(pattern, among)).toEqual(wanted.length > 0 ? wanted : "pattern-without-model");
      }),
    );
  });

  test("of numbers means the numbers between, both ends included", () => {
    const number = fc.integer({ min: 0, max: 999 });
    fc.assert(
      fc.property(number, number, fc.array(number, { maxLength: 40 }), (one, other, numbers) => {
        const write = (value: number) => `WX${String(value).padStart(3, "0")}A`;
        const [from, to] = [Math.min(one, other), Math.max(one, other)];
        const wanted = sorted(numbers.filter((value) => value >= from && value <= to).map(write));
        const found = expand(`${write(from)}..${write(to)}`, sorted(numbers.map(write)));
        expect(found).toEqual(wanted.length > 0 ? wanted.map(({ code }) => code) : "pattern-without-model");
      }),
    );
  });
});

describe("a row with a pattern", () => {
  test("gives its part to each model that the feed names by its full code, before or after", () => {
    const feed = collectRows(
      { model: "WX-10" },
      { model: "WX-1*", number: "LLS-2", variant: "B" },
      { model: "WX-11" },
      { model: "WX-20" },
    );
    expect(fitsOf(feed)).toEqual({
      "WX-10": ["LLS-1", "LLS-2"],
      "WX-11": ["LLS-1", "LLS-2"],
      "WX-20": ["LLS-1"],
    });
    expect(feed.figures).toMatchObject({ rowsUsed: 4, conditions: 2 });
  });

  test("of any brand among many looks at the models of that brand once, and not at all of them", () => {
    const brands = Array.from({ length: 30 }, (_, at) => `Brand ${at}`);
    const rows = brands.flatMap((brand, at) => [
      { brand, model: `WX-${at}` },
      { brand, model: "WX-*", number: "LLS-2" },
    ]);
    const text = toCsv(rows.map((row) => ({ ...goodRow, ...row })));
    expect(collectText(text, { limits: { looks: 30 } }).figures.rowsUsed).toBe(60);
  });

  test("means models of its own brand only", () => {
    const feed = collectRows(
      { model: "WX-10" },
      { model: "WX-11", brand: "Tarnhoxby" },
      { model: "WX-1?", number: "LLS-2" },
    );
    expect(fitsOf(feed)).toEqual({ "WX-10": ["LLS-1", "LLS-2"], "WX-11": ["LLS-1"] });
  });

  test("that means nothing is told with its line, and names no model", () => {
    const feed = collectRows({}, { model: "QQ 1*" }, { model: "WX-9..WX-1" });
    expect(feed.problems.first).toMatchObject([
      { code: "pattern-without-model", line: 3, column: 11, found: "QQ 1*" },
      { code: "bad-pattern", line: 4, column: 11 },
    ]);
    expect(feed.figures).toMatchObject({ rowsRead: 3, rowsUsed: 1, models: 1 });
  });
});

describe("a feed whose patterns explode", () => {
  const models = (count: number) => Array.from({ length: count }, (_, at) => ({ model: `WX-${100 + at}` }));
  const patterns = (count: number) =>
    Array.from({ length: count }, (_, at) => ({ model: "WX-*", number: `P${at}` }));
  const collect = (rows: Record<string, string>[], limits: Partial<FeedLimits>) =>
    collectText(toCsv(rows.map((row) => ({ ...goodRow, ...row }))), { limits });

  test("is stopped at so many fitments, with the line that went past the limit, and not cut short", () => {
    const rows = [...models(10), ...patterns(4)];
    expect(collect(rows, { expanded: 40 }).figures.rowsUsed).toBe(14);
    expect(() => collect(rows, { expanded: 39 })).toThrow(UnusableFeed);
    expect(() => collect(rows, { expanded: 39 })).toThrow(
      'The patterns of this feed mean more than 39 fitments, which is the most for one feed. The one that goes past it is "WX-*" in line 15. Write narrower patterns',
    );
  });

  test("is stopped at so many rows with a pattern, before it is read to the end", () => {
    const collector = createCollector({ few: 3, limits: { patterns: 3 } });
    const rows = patterns(4).map((row) => ({ ...goodRow, ...row }));
    expect(() => collector.push(toCsv(rows))).toThrow(
      "This feed has more than 3 rows with a pattern, which is the most for one feed",
    );
  });

  test("is stopped at so many looks at models, though each pattern means few", () => {
    const narrow = [101, 102, 103].map((number) => ({ model: `WX*${number}` }));
    expect(collect([...models(10), ...narrow], { looks: 30 }).figures.rowsUsed).toBe(13);
    expect(() => collect([...models(10), ...narrow], { looks: 29 })).toThrow(
      'To find what the patterns of this feed mean takes more than 29 looks at a model, which is the most for one feed. The one that goes past it is "WX*103" in line 14',
    );
  });

  test("is stopped at so many fitments that it lists itself, too", () => {
    expect(() => collect(models(10), { fitments: 9 })).toThrow(
      "This feed has more than 9 fitments, which is the most for one feed",
    );
  });
});
