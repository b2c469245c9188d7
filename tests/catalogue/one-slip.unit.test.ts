import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { codeDistance, isOneSlip } from "../../src/catalogue/index.ts";

const everyEditCostsOne = { lookAlike: 1, ending: 1, misreading: 1, swap: 1, doubled: 1, other: 1 };
const code = fc.string({ unit: fc.constantFrom(..."ABC"), maxLength: 7 });

describe("one slip", () => {
  test.each([
    ["another character", "WX431A", "WX471A"],
    ["a missing one", "WX431A", "WX41A"],
    ["one too much at the end", "WX431A", "WX431AA"],
    ["a swap of neighbours", "WX431A", "WX413A"],
  ])("is %s", (_, one, other) => {
    expect(isOneSlip(one, other)).toBe(true);
    expect(isOneSlip(other, one)).toBe(true);
  });

  test.each([
    ["nothing", "WX431A", "WX431A"],
    ["two others", "WX431A", "WX472A"],
    ["a swap across a third", "WX431A", "WX134A"],
    ["two missing", "WX431A", "W431"],
  ])("is not %s", (_, one, other) => {
    expect(isOneSlip(one, other)).toBe(false);
  });

  test("is what optimal string alignment calls one edit", () => {
    fc.assert(
      fc.property(code, code, (one, other) => {
        expect(isOneSlip(one, other)).toBe(codeDistance(one, other, everyEditCostsOne) === 1);
      }),
    );
  });
});
