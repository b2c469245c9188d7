import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  codeDistance,
  editCosts,
  foldCode,
  markDifferences,
  normaliseCode,
} from "../../src/catalogue/index.ts";

const everyEditCostsOne = { lookAlike: 1, ending: 1, misreading: 1, swap: 1, doubled: 1, other: 1 };

/** Optimal string alignment by its recursive definition (Boytsov 2011), slow and plain. */
function alignSlowly(a: string, b: string): number {
  if (a === "" || b === "") return a.length + b.length;
  const costs = [
    alignSlowly(a.slice(0, -1), b) + 1,
    alignSlowly(a, b.slice(0, -1)) + 1,
    alignSlowly(a.slice(0, -1), b.slice(0, -1)) + (a.at(-1) === b.at(-1) ? 0 : 1),
  ];
  if (a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1))
    costs.push(alignSlowly(a.slice(0, -2), b.slice(0, -2)) + 1);
  return Math.min(...costs);
}

const shortCode = fc.string({ unit: fc.constantFrom(..."ABO083"), maxLength: 6 });
const code = fc.string({ unit: fc.constantFrom(..."ABEILOSTUZ0123456789?É"), maxLength: 14 });

describe("the distance of two codes", () => {
  test("is optimal string alignment when every edit costs one", () => {
    fc.assert(
      fc.property(shortCode, shortCode, (a, b) => {
        expect(codeDistance(a, b, everyEditCostsOne)).toBe(alignSlowly(a, b));
      }),
    );
  });

  // The textbook pair on which optimal string alignment (3) and full Damerau-Levenshtein (2) differ.
  test("does not edit a swapped pair again: CA to ABC is three edits", () => {
    expect(codeDistance("CA", "ABC", everyEditCostsOne)).toBe(3);
  });

  test.each([
    ["a look-alike", "WX80", "WX8O", editCosts.lookAlike],
    ["a published misreading", "WX83", "WX88", editCosts.misreading],
    ["a swap of neighbours", "WX84", "WX48", editCosts.swap],
    ["a swap of the first two", "WX84", "XW84", editCosts.swap],
    ["any other character", "WX84", "WX8T", editCosts.other],
    ["a missing character", "WX84", "WX8", editCosts.other],
    ["a key that was hit twice", "WX884", "WX84", editCosts.doubled],
    ["one of two like characters left out", "WX84", "WXX84", editCosts.doubled],
  ])("charges %s as the table says", (_, a, b, cost) => {
    expect(codeDistance(a, b)).toBe(cost);
  });

  // Suggested costs: look-alike 0.2, swap 0.6, other 1 (judgement, no source).
  test("charges a fifth of an edit for a look-alike and three fifths for a swap", () => {
    expect(editCosts.lookAlike / editCosts.other).toBe(0.2);
    expect(editCosts.swap / editCosts.other).toBe(0.6);
  });

  test("is the same both ways", () => {
    fc.assert(
      fc.property(code, code, (a, b) => {
        expect(codeDistance(a, b)).toBe(codeDistance(b, a));
      }),
    );
  });

  test("is zero only for codes that are the same after normalising", () => {
    const spaced = fc.tuple(code, fc.constantFrom("", " ", "-", "/"), fc.boolean());
    fc.assert(
      fc.property(spaced, code, fc.boolean(), ([text, separator, isLower], other, isSame) => {
        const typed = [...text].join(separator);
        const one = normaliseCode(isLower ? typed.toLowerCase() : typed);
        const two = normaliseCode(isSame ? text : other);
        fc.pre(one.kind === "code" && two.kind === "code");
        if (one.kind === "code" && two.kind === "code")
          expect(codeDistance(one.code, two.code) === 0).toBe(one.code === two.code);
      }),
    );
  });

  test("within half an edit leaves nothing but look-alikes", () => {
    fc.assert(
      fc.property(code, fc.array(fc.tuple(fc.nat(), fc.constantFrom(..."BILOSZ0128"))), (a, changes) => {
        const b = [...a];
        for (const [place, character] of changes) b[place % (b.length || 1)] = character;
        if (codeDistance(a, b.join("")) <= editCosts.other / 2)
          expect(foldCode(b.join(""))).toBe(foldCode(a));
      }),
    );
  });
});

describe("marking the differences", () => {
  const shown = (typed: string, display: string) =>
    [...display]
      .map((character, index) => (markDifferences(typed, display)[index] ? "^" : character))
      .join("");

  test.each([
    ["WXM431AB81", "WXM 431AB8/1", "WXM 431AB8/1"],
    ["WXM431A881", "WXM 431AB8/1", "WXM 431A^8/1"],
    ["WXM413AB81", "WXM 431AB8/1", "WXM 4^^AB8/1"],
    ["XWM431AB81", "WXM 431AB8/1", "^^M 431AB8/1"],
    ["WXM41AB81", "WXM 431AB8/1", "WXM 4^1AB8/1"],
    ["WXM4331AB81", "WXM 431AB8/1", "WXM 431AB8/1"],
    ["XM431AB81", "WXM 431AB8/1", "^XM 431AB8/1"],
    ["WXM431AB8", "WXM 431AB8/1", "WXM 431AB8/^"],
    ["", "A-1", "^-^"],
  ])("typed %s against %s gives %s", (typed, display, expected) => {
    expect(shown(typed, display)).toBe(expected);
  });

  test("gives one mark a character, none if nothing differs, and at least one if as much was typed", () => {
    fc.assert(
      fc.property(code, code, (typed, display) => {
        const marks = markDifferences(typed, display);
        expect(marks).toHaveLength([...display].length);
        if (typed === display) expect(marks).not.toContain(true);
        else if (typed.length <= display.length) expect(marks).toContain(true);
      }),
    );
  });
});
