import { describe, expect, test } from "vitest";
import { readTrade } from "../../../src/cli/catalogue/trade.ts";
import { ownFlows } from "../../../src/workbench/build/index.ts";
import { accuracyOf } from "./accuracy.ts";
import { shopShape } from "./shop-shape.ts";

const { kinds } = readTrade(ownFlows);

describe("a feed as shops have it, of 2,060 rows", () => {
  const shape = shopShape();

  test("has what makes such feeds hard", () => {
    expect(shape.rows).toBe(2060);
    const sizes = [...shape.truth.values()].map(({ size }) => size);
    expect(Math.min(...sizes)).toBe(1);
    expect(Math.max(...sizes)).toBeGreaterThanOrEqual(79);
    for (const hard of ["\uFEFF", ";;", "&uuml;", "&amp;", ",", " €", "/"])
      expect(shape.text).toContain(hard);
  });

  test.each([11, 12, 13])(
    "gives 97 of 100 true fitments and none that is wrong, every loss with its reason: seed %i",
    (seed) => {
      const made = shopShape(2060, seed);
      const { truth, found, wrong, understood, needs } = accuracyOf(made, kinds);
      expect(needs).toEqual([]);
      expect(wrong).toEqual([]);
      expect(found / truth).toBeGreaterThanOrEqual(0.97);
      const { read, used, losses } = understood.parts;
      const rows = losses.filter(({ of }) => of === "row");
      expect(read).toBe(2060);
      expect(rows.reduce((sum, { count }) => sum + count, 0)).toBe(read - used);
      expect(rows.map(({ message }) => message).sort()).toEqual([
        "Its name tells no kind of part that is known. Name it in names, or in a column.",
        "The price is empty.",
      ]);
      for (const { places, count } of rows) expect(places).toHaveLength(Math.min(3, count));
    },
  );
});
