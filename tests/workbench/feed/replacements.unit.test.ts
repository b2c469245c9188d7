import { describe, expect, test } from "vitest";
import { collectRows, fitsOf } from "./feed-fixture.ts";

/** A row for model M1 (or another) with this part and what it says of others. */
const part = (number: string, change: Record<string, string> = {}) => ({ model: "M1", number, ...change });
const replacesOf = ({ collected }: ReturnType<typeof collectRows>) =>
  Object.fromEntries(collected.parts.map(({ number, replaces }) => [number, replaces]));

describe("a part that was replaced", () => {
  test("gives way to the part that says so, for all of its models", () => {
    const feed = collectRows(
      part("OLD"),
      part("OLD", { model: "M2" }),
      part("NEW", { model: "M3", replaces: "OLD" }),
    );
    expect(fitsOf(feed)).toEqual({ M1: ["NEW"], M2: ["NEW"], M3: ["NEW"] });
    expect(replacesOf(feed)).toEqual({ NEW: ["OLD"] });
    expect(feed.problems.total).toBe(0);
  });

  test("gives way to the part that it names itself, at the end of the chain", () => {
    const feed = collectRows(
      part("A", { "replaced-by": "B" }),
      part("B", { "replaced-by": "C", model: "M2" }),
      part("C", { model: "M3" }),
    );
    expect(fitsOf(feed)).toEqual({ M1: ["C"], M2: ["C"], M3: ["C"] });
    expect(replacesOf(feed).C?.sort()).toEqual(["A", "B"]);
    expect(feed.figures.chains).toEqual({ count: 1, longest: 2, loops: 0 });
  });

  test("is found across numbers that the feed does not sell", () => {
    const feed = collectRows(part("C", { replaces: "B" }), part("A", { "replaced-by": "B", model: "M2" }));
    expect(fitsOf(feed)).toEqual({ M1: ["C"], M2: ["C"] });
    expect(replacesOf(feed).C?.sort()).toEqual(["A", "B"]);
  });

  test("may be several older numbers at once, of which the feed has none", () => {
    const feed = collectRows(part("NEW", { replaces: "X1| X2 |X3" }));
    expect(replacesOf(feed)).toEqual({ NEW: ["X1", "X2", "X3"] });
  });

  test("keeps the condition on which it fits", () => {
    const feed = collectRows(
      part("OLD", { "serial-to": "500" }),
      part("NEW", { replaces: "OLD", model: "M2" }),
    );
    expect(fitsOf(feed)).toEqual({ M1: ["NEW"], M2: ["NEW"] });
    expect([...feed.collected.conditions]).toEqual([[0, { serialTo: "500" }]]);
  });

  test("leaves the new part once where a model names both, which is no duplicate of the feed", () => {
    const feed = collectRows(part("OLD"), part("NEW", { replaces: "OLD" }));
    expect(fitsOf(feed)).toEqual({ M1: ["NEW"] });
    expect(feed.figures.duplicates).toBe(0);
  });

  test("stays where its chain ends with a part that the feed does not have, and that is told", () => {
    const feed = collectRows(
      part("A", { "replaced-by": "B" }),
      part("B", { "replaced-by": "GONE", model: "M2" }),
    );
    expect(fitsOf(feed)).toEqual({ M1: ["B"], M2: ["B"] });
    expect(feed.problems.first).toMatchObject([{ code: "open-chain", line: 3, found: "GONE" }]);
  });

  test("stays where parts replace each other in a circle, with all that leads into it", () => {
    const feed = collectRows(
      part("A", { "replaced-by": "B" }),
      part("B", { "replaced-by": "C", model: "M2" }),
      part("C", { "replaced-by": "A", model: "M3" }),
      part("D", { "replaced-by": "B", model: "M4" }),
      part("E", { "replaced-by": "E", model: "M5" }),
    );
    expect(fitsOf(feed)).toEqual({ M1: ["A"], M2: ["B"], M3: ["C"], M4: ["D"], M5: ["E"] });
    expect(feed.problems.first).toMatchObject([
      { code: "chain-loop", line: 2, message: expect.stringContaining("A → B → C → A") },
      { code: "chain-loop", line: 6 },
    ]);
    expect(feed.figures.chains.loops).toBe(2);
    const olds = Object.values(replacesOf(feed));
    expect(olds.length).toBeGreaterThan(0);
    expect(olds.filter((one) => one !== undefined)).toEqual([]);
  });

  test("counts as replaced by the first of two that claim it, and both lines are named", () => {
    const feed = collectRows(
      part("OLD"),
      part("N1", { replaces: "OLD", model: "M2" }),
      part("N2", { replaces: "OLD", model: "M3" }),
    );
    expect(fitsOf(feed)).toEqual({ M1: ["N1"], M2: ["N1"], M3: ["N2"] });
    expect(feed.problems.first).toMatchObject([{ code: "replacement-conflict", line: 4 }]);
    expect(feed.problems.first[0]?.message).toContain("line 3");
    expect(replacesOf(feed)).toEqual({ N1: ["OLD"], N2: undefined });
  });

  test("stays where what replaces it is another kind of part", () => {
    const feed = collectRows(
      part("OLD", { "replaced-by": "NEW" }),
      part("NEW", { model: "M2", kind: "door-seal" }),
    );
    expect(fitsOf(feed)).toEqual({ M1: ["OLD"], M2: ["NEW"] });
    expect(feed.problems.first).toMatchObject([{ code: "replacement-of-other-kind", line: 2 }]);
  });

  test("may stand at the start of a chain of thousands", () => {
    const chain = Array.from({ length: 5000 }, (_, at) =>
      part(`P${at}`, { model: `M${at}`, "replaced-by": at < 4999 ? `P${at + 1}` : "" }),
    );
    const feed = collectRows(...chain);
    expect(new Set(Object.values(fitsOf(feed)).flat())).toEqual(new Set(["P4999"]));
    expect(feed.figures.chains).toEqual({ count: 1, longest: 4999, loops: 0 });
    expect(feed.problems.total).toBe(0);
  });

  test("is called __proto__ without harm", () => {
    const feed = collectRows(
      part("__proto__", { "replaced-by": "constructor" }),
      part("constructor", { model: "M2" }),
    );
    expect(fitsOf(feed)).toEqual({ M1: ["constructor"], M2: ["constructor"] });
  });
});
