import { describe, expect, test } from "vitest";
import { betaBelow, betaQuantile } from "../../../src/workbench/learn/beta.ts";

// Closed forms of the beta distribution, as DLMF 8.17 gives them for these arguments.
describe("a quantile of the beta distribution", () => {
  test.each([0.5, 1, 7, 300, 4000])("is 1 - (1 - p)^(1/b) for a = 1, b = %d", (b) => {
    for (const p of [0.025, 0.5, 0.975])
      expect(betaQuantile(p, 1, b)).toBeCloseTo(-Math.expm1(Math.log1p(-p) / b), 12);
  });

  test.each([0.5, 1, 7, 300, 4000])("is p^(1/a) for a = %d, b = 1", (a) => {
    for (const p of [0.025, 0.5, 0.975]) expect(betaQuantile(p, a, 1)).toBeCloseTo(p ** (1 / a), 12);
  });

  test("is the arcsine law for two halves", () => {
    for (const p of [0.025, 0.3, 0.975])
      expect(betaQuantile(p, 0.5, 0.5)).toBeCloseTo(Math.sin((Math.PI * p) / 2) ** 2, 12);
  });

  test("has as much below it as it was asked for, for many searches too", () => {
    for (const [a, b] of [
      [0.3, 5000],
      [2, 5],
      [812.5, 4211.5],
    ] as const)
      for (const p of [0.025, 0.5, 0.975]) expect(betaBelow(betaQuantile(p, a, b), a, b)).toBeCloseTo(p, 9);
  });

  test("of two equal arguments has half below the middle", () => {
    for (const a of [0.7, 3, 90]) expect(betaBelow(0.5, a, a)).toBeCloseTo(0.5, 12);
  });
});
