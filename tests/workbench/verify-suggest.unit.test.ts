import { describe, expect, test } from "vitest";
import { nearest } from "../../src/workbench/verify/suggest.ts";

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
