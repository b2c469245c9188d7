import { describe, expect, test } from "vitest";
import { learnableCauses } from "../../../src/compile/index.ts";
import type { InsightLine } from "../../../src/insight/index.ts";
import { readFlow } from "../../../src/workbench/build/index.ts";
import { countSearch, createSearches, learnFrom } from "../../../src/workbench/learn/index.ts";
import { chanceOf, normal, pick } from "../../bench/world/chance.ts";

const flow = readFlow();
const scenarios = Object.keys(flow.scenarios);

const ended = (scenario: string, cause: string | null): InsightLine => ({
  ...{ format: 1, what: "ended", outcome: "fixed", scenario, cause },
  ...{ part: null, minutes: 5, answers: 9 },
});

/** 5,000 searches in a world whose causes are up to a few times likelier or rarer than the trade judges. */
function simulate(seed: number, searches = 5000) {
  const chance = chanceOf(`world ${seed}`);
  const times = Object.fromEntries(
    Object.keys(flow.machine.causes).map((cause) => [cause, Math.exp(normal(chance, 0, 0.7))]),
  );
  const worlds = scenarios.map((scenario) => {
    const weights = Object.entries(learnableCauses(flow, scenario)).map(
      ([cause, share]) => [cause, share * (times[cause] ?? 1)] as const,
    );
    const total = weights.reduce((sum, [, weight]) => sum + weight, 0);
    return { scenario, shares: weights.map(([cause, weight]) => [cause, weight / total] as const) };
  });
  const counts = createSearches();
  const planted = new Map<string, number>();
  for (let search = 0; search < searches; search++) {
    // Some complaints are far commoner than others.
    const world = worlds[Math.floor(chance() ** 2 * worlds.length)] as (typeof worlds)[number];
    const cause = pick(chance, world.shares);
    expect(countSearch(counts, flow, ended(world.scenario, cause))).toBe(true);
    for (const [each, share] of world.shares) planted.set(each, (planted.get(each) ?? 0) + share / searches);
  }
  return { counts, planted };
}

describe("shares of causes, learnt from what was found", () => {
  test("have the planted share within their 95 % interval in at least 93 of 100 causes", () => {
    let [inside, all] = [0, 0];
    for (let seed = 1; seed <= 12; seed++) {
      const { counts, planted } = simulate(seed);
      for (const { cause, low, high } of learnFrom(flow, counts, 25).causes) {
        const truth = planted.get(cause) ?? 0;
        all++;
        if (low <= truth && truth <= high) inside++;
      }
    }
    expect(all).toBeGreaterThan(200);
    expect(inside / all).toBeGreaterThanOrEqual(0.93);
  });

  test("come nearer to the planted ones than the trade's judgement is", () => {
    const { counts, planted } = simulate(99);
    const learnt = learnFrom(flow, counts, 25).causes;
    const off = (key: "was" | "is") =>
      learnt.reduce((sum, one) => sum + Math.abs(one[key] - (planted.get(one.cause) ?? 0)), 0);
    expect(off("is")).toBeLessThan(off("was") / 3);
    expect(learnt.filter(({ hasMoved }) => hasMoved).length).toBeGreaterThan(3);
  });

  test("are still those of the trade where few searches say otherwise", () => {
    const [scenario = ""] = scenarios;
    const [cause = ""] = Object.keys(learnableCauses(flow, scenario));
    const counts = createSearches();
    countSearch(counts, flow, ended(scenario, cause));
    for (const one of learnFrom(flow, counts, 1_000_000).causes) expect(one.is).toBeCloseTo(one.was, 5);
  });

  test("sum to one, before and after", () => {
    const learnt = learnFrom(flow, simulate(5, 500).counts, 25).causes;
    for (const key of ["was", "is"] as const)
      expect(learnt.reduce((sum, one) => sum + one[key], 0)).toBeCloseTo(1, 9);
  });

  test("leave alone a cause that no check can settle, and lines that say nothing of causes", () => {
    const counts = createSearches();
    const [scenario = ""] = scenarios;
    for (const line of [
      ended(scenario, null),
      ended(scenario, "no-such-cause"),
      ended(scenario, "constructor"),
      ended("no-such-scenario", "door-blocked"),
      { format: 1, what: "started" } as const,
    ])
      expect(countSearch(counts, flow, line)).toBe(false);
    expect(counts.counts.size + counts.seen.size).toBe(0);
  });
});
