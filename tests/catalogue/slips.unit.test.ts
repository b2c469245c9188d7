import { describe, expect, test } from "vitest";
import { codeDistance, editCosts } from "../../src/catalogue/index.ts";
import { luck } from "../bench/households/chance.ts";
import { confusions, published } from "./published-confusions.ts";
import { disturb, keyOf, type Slip, slipKinds } from "./slips.ts";

const codes = ["WXM 431AB8/1", "TBY-512-S1.K", "UM4.7-TF6", "PK 00112"];

/** Many slips of one kind in each code, with their normalised texts. */
function many(slip: Slip) {
  return codes.flatMap((code, number) =>
    Array.from({ length: 200 }, (_, at) => {
      let draw = 0;
      const typed = disturb(code, slip, () => luck(7, slip, number, at, draw++));
      return { before: keyOf(code), after: keyOf(typed ?? ""), typed, code };
    }),
  );
}

/** The one place where two texts of a length differ. */
const changed = (before: string, after: string) => {
  const places = [...before].flatMap((character, at) => (character === after[at] ? [] : [at]));
  expect(places).toHaveLength(1);
  return [before[places[0] ?? 0] ?? "", after[places[0] ?? 0] ?? ""] as const;
};

describe("a slip", () => {
  test.each(slipKinds)(
    "of kind %s changes a code by one edit at most and never leaves it as it was",
    (slip) => {
      for (const { before, after } of many(slip)) {
        expect(after).not.toBe(before);
        expect(codeDistance(after, before)).toBeLessThanOrEqual(editCosts.other);
      }
    },
  );

  test("is the same for the same chance, and another for another", () => {
    expect(many("wrong")).toEqual(many("wrong"));
    expect(new Set(many("wrong").map(({ typed }) => typed)).size).toBeGreaterThan(50);
  });

  test("that looks alike puts a published letter for a digit or the other way round", () => {
    for (const { before, after } of many("look-alike")) {
      const [one, other] = changed(before, after);
      expect(confusions).toContain(one + other);
      expect(/\d/.test(one)).not.toBe(/\d/.test(other));
    }
  });

  test("that is a wrong character takes a digit for what it is published to be misread as", () => {
    const letters = new Set<string>();
    for (const { before, after } of many("wrong")) {
      const [one, other] = changed(before, after);
      if (/\d/.test(one)) expect(published).toContain(one + other);
      else letters.add(other);
    }
    expect(letters.size).toBeGreaterThan(20);
  });

  test("that swaps two neighbours reaches across a separator and leaves it in its place", () => {
    expect(disturb("A/1", "swap", () => 0)).toBe("1/A");
    for (const { typed, code } of many("swap"))
      expect(typed?.replace(/\w/g, "#")).toBe(code.replace(/\w/g, "#"));
  });

  test("of a missing or doubled character changes the length by one", () => {
    for (const { before, after } of many("missing")) expect(after).toHaveLength(before.length - 1);
    for (const { before, after } of many("doubled")) {
      expect(after).toHaveLength(before.length + 1);
      expect(after).toMatch(/(.)\1/);
    }
  });

  test("is not there where the code has no place for it", () => {
    expect(disturb("AAA", "swap", () => 0)).toBeNull();
    expect(disturb("XXX", "look-alike", () => 0)).toBeNull();
    expect(disturb("--", "missing", () => 0)).toBeNull();
  });
});
