import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assessSeal } from "./assess.ts";
import type { SealReading } from "./reading.ts";

// What the spots mean together: common practice, no source.
type Spot = SealReading["spots"][number];

const seal = (spots: readonly Spot[]): SealReading => ({ kind: "seal", door: "one", spots: [...spots] });
const assess = (spots: readonly Spot[]) => assessSeal(seal(spots), { longestArc: 3 });
/** A seal that grips all round but for some spots. */
const around = (how: Spot, ...spots: number[]) =>
  Array.from({ length: 12 }, (_, spot): Spot => (spots.includes(spot) ? how : "grips"));
const slipsAt = (...spots: number[]) => assess(around("slips", ...spots)).pattern;

const spot = fc.constantFrom<Spot>(null, "grips", "drags", "slips");
const twelve = fc.array(spot, { minLength: 12, maxLength: 12 });

describe("where the paper slips", () => {
  test("nowhere is a sound seal", () => {
    expect(assess(around("grips"))).toEqual({
      pattern: "sound",
      verdict: "passes",
      slips: 0,
      at: [],
      weak: 0,
    });
  });

  test("a spot that drags still holds, and is counted as weak", () => {
    expect(assess(around("drags", 2, 7))).toMatchObject({ pattern: "sound", slips: 0, weak: 2 });
  });

  test.each([
    ["a corner alone", [3]],
    ["a corner and what is next to it", [5, 6]],
    ["a corner between two spots", [8, 9, 10]],
    ["the top left corner, where the counting begins and ends", [11, 0, 1]],
    ["a side and its corner", [10, 11, 0]],
  ])("%s means a door out of line there", (_, spots) => {
    expect(slipsAt(...spots)).toBe("corner");
    expect(assess(around("slips", ...spots)).verdict).toBe("corner");
  });

  test("one or two spots on end within a side mean something in the way", () => {
    for (const spots of [[1], [2], [1, 2], [4, 5], [7, 8], [10, 11]])
      expect(slipsAt(...spots)).toBe("in-the-way");
  });

  test.each([
    ["two places apart", [1, 7]],
    ["two corners", [0, 3]],
    ["a corner, and a side elsewhere", [0, 7]],
    ["four spots on end", [2, 3, 4, 5]],
    ["a whole side", [3, 4, 5, 6]],
    ["all round", [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]],
    ["all but one", [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]],
  ])("%s means a worn seal", (_, spots) => {
    expect(slipsAt(...spots)).toBe("worn");
    expect(assess(around("slips", ...spots)).verdict).toBe("fails");
  });

  test("the spots that slip are told", () => {
    expect(assess(around("slips", 7, 1))).toMatchObject({ slips: 2, at: [1, 7] });
  });
});

describe("spots that were not tried", () => {
  test("nothing tried at all is unclear", () => {
    expect(assess([]).pattern).toBe("unclear");
    expect(assess(around(null, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11)).verdict).toBe("unclear");
  });

  test("one that could still slip leaves a sound seal unclear", () => {
    expect(assess(around(null, 9)).pattern).toBe("unclear");
  });

  test("a worn seal is worn whatever they would show", () => {
    const worn = around("slips", 1, 5);
    expect(assess(worn.map((how, index) => (index === 8 ? null : how))).pattern).toBe("worn");
  });

  test("beside a corner that slips they change nothing as long as the arc stays short", () => {
    const corner = around("slips", 3);
    expect(assess(corner.map((how, index) => (index === 4 ? null : how))).pattern).toBe("corner");
    expect(assess(corner.map((how, index) => (index === 7 ? null : how))).pattern).toBe("unclear");
  });

  test("fewer than twelve entries are spots not tried, more are left out, and what is no answer is none", () => {
    expect(assess(around("grips").slice(0, 11)).pattern).toBe("unclear");
    expect(assess([...around("grips"), "slips", "slips"])).toMatchObject({ pattern: "sound", slips: 0 });
    expect(assess(around("loose" as Spot, 4)).pattern).toBe("unclear");
  });
});

describe("any seal", () => {
  test("a door turned by a quarter keeps its pattern", () => {
    fc.assert(
      fc.property(twelve, fc.constantFrom(3, 6, 9), (spots, turn) => {
        const turned = [...spots.slice(turn), ...spots.slice(0, turn)];
        expect(assess(turned).pattern).toBe(assess(spots).pattern);
      }),
      { numRuns: 2000 },
    );
  });

  test("a door seen in a mirror keeps its pattern", () => {
    fc.assert(
      fc.property(twelve, (spots) => {
        const mirrored = spots.map((_, index) => spots[(12 + 3 - index) % 12] ?? null);
        expect(assess(mirrored).pattern).toBe(assess(spots).pattern);
      }),
    );
  });

  test("one more spot that slips never makes a seal sound", () => {
    fc.assert(
      fc.property(twelve, fc.integer({ min: 0, max: 11 }), (spots, index) => {
        const more = spots.map((how, at): Spot => (at === index ? "slips" : how));
        expect(assess(more).pattern).not.toBe("sound");
      }),
    );
  });

  test("with every spot tried there is always a pattern, and it is sound only where none slips", () => {
    const tried = fc.array(fc.constantFrom<Spot>("grips", "drags", "slips"), {
      minLength: 12,
      maxLength: 12,
    });
    fc.assert(
      fc.property(tried, (spots) => {
        const { pattern, slips, at } = assess(spots);
        expect(pattern).not.toBe("unclear");
        expect(pattern === "sound").toBe(slips === 0);
        expect(at).toHaveLength(slips);
      }),
    );
  });

  test("spots not tried are taken once as holding and once as slipping, and where those differ it is unclear", () => {
    fc.assert(
      fc.property(twelve, (spots) => {
        const before = assess(spots).pattern;
        const gripping = assess(spots.map((how): Spot => how ?? "grips")).pattern;
        const slipping = assess(spots.map((how): Spot => how ?? "slips")).pattern;
        expect(before).toBe(gripping === slipping ? gripping : "unclear");
      }),
    );
  });

  test("no list whatever throws", () => {
    fc.assert(
      fc.property(fc.array(fc.anything()), (spots) => {
        expect(() => assess(spots as Spot[])).not.toThrow();
      }),
    );
  });
});
