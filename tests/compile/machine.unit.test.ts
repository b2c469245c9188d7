import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chanceOfComplaint, complainedWorlds } from "../../src/compile/complained.ts";
import { likelihoodsOf } from "../../src/compile/likelihoods.ts";
import { onGrid } from "../../src/compile/model-of.ts";
import { causesOf, sharesOf } from "../../src/compile/shares.ts";
import { isThere } from "../../src/compile/worlds.ts";
import type { Flow, Machine, Spread } from "../../src/guide/index.ts";
import { ownFlow } from "../own-flow.ts";
import { enumerated } from "./enumerated.ts";

const chance = fc.double({ min: 0.05, max: 1, noNaN: true });
const spread = (states: string[]): fc.Arbitrary<Spread> =>
  fc
    .tuple(...states.map(() => chance))
    .map((all) => Object.fromEntries(states.map((one, at) => [one, all[at] ?? 0])));
const two = ["fine", "bad"];
const three = ["fine", "low", "none"];

/** A line of water, a tray that follows it, a bin that follows the tray; two causes act on them, a third on none. */
const machines: fc.Arbitrary<Machine> = fc
  .record({
    ...{ low: spread(three), none: spread(three), short: spread(two), root: spread(two) },
    ...{ a: spread(three), b: spread(three), both: spread(two), dry: chance, little: chance, wet: chance },
  })
  .map(({ low, none, short, root, a, b, both, dry, little, wet }) => ({
    quantities: {
      flow: { states: three },
      age: { states: two, follows: [{ is: root }] },
      tray: {
        states: three,
        follows: [
          { when: { flow: ["low"] }, is: low },
          { when: { flow: ["none"] }, is: none },
        ],
      },
      bin: { states: two, follows: [{ when: { tray: ["low", "none"], age: ["bad"] }, is: short }] },
    },
    complaints: { dry: { tray: { none: dry, low: little } }, wet: { bin: { bad: wet } } },
    causes: {
      a: { share: 2, reason: "for a test", does: { flow: a } },
      b: { share: 1, reason: "for a test", does: { tray: b, age: both } },
    },
  }));

describe("on a small machine, whatever its numbers,", () => {
  test("what is complained of and what a check then shows is what every state of the whole network comes to", () => {
    fc.assert(
      fc.property(machines, (machine) => {
        for (const cause of ["a", "b"])
          for (const complaint of ["dry", "wet"]) {
            const shows = { bin: ["bad"], flow: ["low", "none"] };
            const all = enumerated(machine, cause, complaint, shows);
            const holds = isThere(machine, [shows]);
            const worlds = complainedWorlds(machine, cause, complaint, ["flow", "bin"]);
            const shown = worlds.reduce((sum, world) => sum + (holds(world) ? world.chance : 0), 0);
            expect(Math.abs(chanceOfComplaint(machine, cause, complaint) - all.complained)).toBeLessThan(
              1e-12,
            );
            expect(Math.abs(shown - all.shown)).toBeLessThan(1e-12);
          }
      }),
      { seed: 13, numRuns: 100 },
    );
  });
});

describe("the project's machine", () => {
  const flow: Flow = ownFlow;

  test("gives every cause of a scenario a share, which sum to 1 with whatever else it may be", () => {
    for (const scenario of Object.keys(flow.scenarios)) {
      const shares = Object.entries(sharesOf(flow, scenario, { "opening.supply": "plumbed" }));
      expect(shares.reduce((sum, [, share]) => sum + share, 0)).toBeCloseTo(1, 12);
      expect(Math.min(...shares.map(([, share]) => share))).toBeGreaterThan(0);
      expect(shares.map(([cause]) => cause)).toContain("anything-else");
    }
  });

  test("makes an ice maker that was off likelier after a holiday, and a first day too short on a new machine", () => {
    const changed = (what: string) =>
      sharesOf(flow, "no-ice-plumbed", { "opening.supply": "plumbed", "opening.changed": what });
    expect(changed("holiday")["switched-off"]).toBeGreaterThan(2 * (changed("nothing")["switched-off"] ?? 1));
    expect(changed("new")["too-soon"]).toBeGreaterThan(10 * (changed("nothing")["too-soon"] ?? 1));
  });

  test("knows no filter in a machine with a tank, and no tank in a plumbed one", () => {
    const with_ = (supply: string) => sharesOf(flow, "odd-cubes", { "opening.supply": supply });
    expect(with_("tank")).not.toHaveProperty("filter-clogged");
    expect(with_("plumbed")).not.toHaveProperty("tank-empty");
  });

  test("lets a cause be suspected where no check of the scenario finds it", () => {
    expect(causesOf(flow, "clumped")).toContain("ice-compartment-iced");
  });

  test("says of every check in every scenario something that no belief breaks on", () => {
    for (const [id, { checks }] of Object.entries(flow.scenarios)) {
      const causes = causesOf(flow, id);
      for (const { check } of checks)
        for (const row of likelihoodsOf(flow, id, check, causes))
          for (const one of row) expect(onGrid(one) > 0 && onGrid(one) < 1, `${id} ${check}`).toBe(true);
    }
  });
});

test("the grid of likelihoods moves no odds by more than 16 %, within its ends", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.0025, max: 0.9975, noNaN: true }), (one) => {
      const odds = (p: number) => p / (1 - p);
      const ratio = odds(onGrid(one)) / odds(one);
      expect(Math.max(ratio, 1 / ratio)).toBeLessThan(1.16);
    }),
  );
});
