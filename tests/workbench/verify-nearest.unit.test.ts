import { describe, expect, test } from "vitest";
import { editsBetween, nearest } from "../../src/workbench/verify/nearest.ts";

// Published examples of the optimal string alignment distance.
test.each([
  ["kitten", "sitting", 3],
  ["saturday", "sunday", 3],
  ["ca", "abc", 3],
  ["ab", "ba", 1],
  ["", "filter", 6],
  ["same", "same", 0],
])("from %o to %o it takes %i edits", (from, to, edits) => {
  expect(editsBetween(from, to)).toBe(edits);
  expect(editsBetween(to, from)).toBe(edits);
});

describe("the nearest name", () => {
  const known = ["filter-age", "filter-seated", "flow-test", "reset"];

  test("is one slip of the finger away", () => {
    expect(nearest("filter-agee", known)).toBe("filter-age");
    expect(nearest("flow-tets", known)).toBe("flow-test");
  });

  test("is none where nothing looks alike", () => {
    expect(nearest("gremlins", known)).toBeNull();
    expect(nearest("x", known)).toBeNull();
  });

  test("is never the name itself", () => {
    expect(nearest("reset", known)).toBeNull();
  });
});
