import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { growTree, readTree } from "../../src/catalogue/shards/shard-tree.ts";

const code = fc.string({ unit: fc.constantFrom(..."WXM0123"), minLength: 1, maxLength: 14 });
const upTo = (most: number) => (places: Uint32Array) => places.length <= most;

describe("the tree of shards", () => {
  test("leads each code to the shard that holds it, however small shards are and whatever text it is kept as", () => {
    fc.assert(
      fc.property(fc.uniqueArray(code, { maxLength: 60 }), fc.integer({ min: 1, max: 9 }), (codes, most) => {
        const { tree, leaves } = growTree(codes, upTo(most));
        const numberOf = readTree(tree);
        for (const [shard, places] of leaves.entries())
          for (const place of places) expect(numberOf(codes[place] as string)).toBe(shard);
        expect(leaves.flatMap((places) => [...places]).sort((a, b) => a - b)).toEqual([...codes.keys()]);
      }),
    );
  });

  test("has no shard that is too large", () => {
    const codes = Array.from({ length: 5000 }, (_, at) => `WXM${at * 7919}K`);
    const { tree, leaves } = growTree(codes, upTo(40));
    expect(Math.max(...leaves.map(({ length }) => length))).toBeLessThanOrEqual(40);
    // Two bits a shard, six bits a sign.
    expect(tree.length).toBe(Math.ceil((2 * leaves.length - 1) / 6));
  });

  test("keeps codes that begin alike together, as long as they fit", () => {
    const series = ["WXM431", "TBY570", "BLQ254", "UM4838"];
    const codes = series.flatMap((stem) => Array.from({ length: 30 }, (_, at) => `${stem}${at}K`));
    const { tree } = growTree(codes, upTo(60));
    const numberOf = readTree(tree);
    for (const stem of series)
      expect(new Set(codes.filter((each) => each.startsWith(stem)).map(numberOf)).size).toBe(1);
  });

  test("ends where no bit is left that tells codes apart, even if nothing is small enough", () => {
    const { tree, leaves } = growTree(["WXM431", "WXM431", "TBY570"], () => false);
    expect(
      leaves
        .map(({ length }) => length)
        .filter(Boolean)
        .sort(),
    ).toEqual([1, 2]);
    expect(readTree(tree)("TBY570")).not.toBe(readTree(tree)("WXM431"));
  });

  test("that was spoilt on the way gives a number all the same", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), code, (tree, each) => {
        expect(readTree(tree)(each)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
