import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isOneSlip } from "../../../src/catalogue/index.ts";
import { findCrowded } from "../../../src/workbench/shards/crowded.ts";

const code = fc.string({ unit: fc.constantFrom(..."WX0123"), minLength: 1, maxLength: 8 });

describe("codes with another one slip away", () => {
  test("are marked, all of them and no others: no code may be taken silently that one slip makes of another", () => {
    fc.assert(
      fc.property(fc.uniqueArray(code, { maxLength: 40 }), (codes) => {
        const crowded = findCrowded(codes);
        for (const [at, one] of codes.entries())
          expect(crowded[at], one).toBe(Number(codes.some((other) => isOneSlip(one, other))));
      }),
    );
  });

  test("are found in one pass over the table as in several", () => {
    const codes = Array.from({ length: 3000 }, (_, at) => `WX${(at * 7919) % 100_003}K`);
    const inOne = findCrowded(codes);
    expect(findCrowded(codes, 500)).toEqual(inOne);
    expect(inOne.filter(Boolean).length).toBeGreaterThan(100);
    expect(inOne.filter(Boolean).length).toBeLessThan(3000);
  });

  test("are not those that have nothing in common", () => {
    expect([...findCrowded(["WXM431A", "TBY570S1", "BLQ254NH"])]).toEqual([0, 0, 0]);
  });

  test("are not those that only share what is left without a sign", () => {
    expect([...findCrowded(["WXM4317A", "WXM3174A", "WXM4317A"])]).toEqual([0, 0, 0]);
  });
});
