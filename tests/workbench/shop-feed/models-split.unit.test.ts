import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { demoCodes } from "../../../demo/generate/feed/index.ts";
import { findSplit, readSplit, saySplit, splitCell } from "../../../src/workbench/shop-feed/index.ts";

const signsOf = (cells: string[]) => {
  const split = findSplit(cells);
  return "signs" in split ? saySplit(split.signs) : `unsure ${split.unsure}`;
};

describe("what stands between the models of a column", () => {
  test.each<[what: string, cells: string[], signs: string]>([
    ["a comma", ["WX 430, WX 431A", "WX 432"], ","],
    ["a semicolon", ["WX430;WX431A", "WX432"], ";"],
    ["a bar", ["WX430|WX431A"], "|"],
    ["a line end, of any kind", ["WX430\r\nWX431A", "WX432\nWX433"], "newline"],
    ["now a comma and now a semicolon", ["WX430, WX431", "WX432; WX433"], ";,"],
    ["nothing, where each cell has one model", ["WX430", "WX431"], "none"],
    ["a slash, between as many codes as there are", ["WX430A/WX431B/WX432C", "WX433D/WX434E", "WX500"], "/"],
    ["a slash, between codes that stand alone elsewhere", ["WX430A/KN7755", "WX430A", "KN7755"], "/"],
  ])("is found: %s", (_, cells, signs) => {
    expect(signsOf(cells)).toBe(signs);
  });

  test.each<[what: string, cells: string[], signs: string]>([
    ["an ending for a country", ["WX 40B8/E, WX 41B8/UK", "WX 42B8"], ","],
    ["an ending of two digits", ["WX40B8/02", "WX41B8/03"], "none"],
    ["a series in front", ["P12/34A5B6-EU, P12/34A5B7-EU"], ","],
  ])("is no slash that belongs to the code: %s", (_, cells, signs) => {
    expect(signsOf(cells)).toBe(signs);
  });

  test.each<[what: string, cells: string[]]>([
    ["two whole codes, once", ["WX4300A/WX4310A", "WX4400"]],
    ["two whole codes that share nothing, in every cell", ["WX430A/KN775B", "WX431A/KN776B"]],
    ["a code that was shortened", ["WX430/431/432", "WX500"]],
    ["two whole codes beside commas", ["WX430A/WX431A, WX500", "WX501"]],
    ["a piece that stands alone elsewhere", ["WX430A/E, KN7755/WX500A", "KN7755"]],
    ["blanks between codes", ["WX430A WX431A WX432A", "WX500"]],
  ])("is asked for where nobody can tell: %s", (_, cells) => {
    expect(signsOf(cells)).toMatch(/^unsure/);
  });

  test("never makes one model of two or two of one, whichever codes of a million-model feed stand in a comma list", () => {
    const codes = [...demoCodes({ models: 3000, seed: 5, dense: false })];
    const lists = fc.array(fc.array(fc.constantFrom(...codes), { minLength: 1, maxLength: 9 }), {
      minLength: 3,
      maxLength: 30,
    });
    fc.assert(
      fc.property(lists, (rows) => {
        const cells = rows.map((row) => row.join(", "));
        const split = findSplit(cells);
        if (!("signs" in split) || !cells.some((cell) => cell.includes(","))) return;
        for (const [at, row] of rows.entries())
          expect(splitCell(cells[at] ?? "", split.signs)).toEqual([...new Set(row)]);
      }),
      { numRuns: 300, seed: 1 },
    );
  });

  test("can be said, in the words that a mapping has", () => {
    expect(readSplit(",/")).toEqual([",", "/"]);
    expect(readSplit("newline")).toEqual(["\n"]);
    expect(readSplit("none")).toEqual([]);
    expect(readSplit("+")).toBeNull();
    expect(saySplit(readSplit("newline;") ?? [])).toBe("newline;");
  });
});
