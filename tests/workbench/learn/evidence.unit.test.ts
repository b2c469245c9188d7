import { describe, expect, test } from "vitest";
import { overlayOf } from "../../../src/cli/learn-command.ts";
import { createInput } from "../../../src/compile/model-of.ts";
import { createBelief, createModel, probabilities, updateBelief } from "../../../src/diagnosis/index.ts";
import type { Flow } from "../../../src/guide/index.ts";
import { ownFlows, readFlow, readShares } from "../../../src/workbench/build/index.ts";
import { countSearch, createSearches, type Learnt, learnFrom } from "../../../src/workbench/learn/index.ts";
import { differenceOf } from "../../bench/learn/compare.ts";
import { type Drawn, drawSearches, judgedRates, type Planted, plantedIn } from "./planted.ts";

const flow = readFlow();
const asJudged: Planted = { times: {}, rates: judgedRates(flow) };
const apart = plantedIn(flow, "apart");

function learn(drawn: readonly Drawn[], worth = 300): Learnt {
  const searches = createSearches();
  for (const { line } of drawn) countSearch(searches, flow, line);
  return learnFrom(flow, searches, worth);
}

const withLearnt = (learnt: Learnt) => readFlow(ownFlows, readShares(overlayOf(learnt, 0)));

/** The log of what the panel believes of the true cause at the end of each search. */
function beliefs(known: Flow, drawn: readonly Drawn[]): number[] {
  const models = new Map(
    [...new Set(drawn.map(({ line }) => line.scenario ?? ""))].map((scenario) => {
      const checks = known.scenarios[scenario]?.checks.map(({ check }) => check) ?? [];
      return [scenario, createModel(createInput(known, scenario, [...new Set(checks)]))];
    }),
  );
  return drawn.map(({ cause, line }) => {
    const model = models.get(line.scenario ?? "");
    if (!model) throw new Error("There is no model");
    const belief = line.seen.reduce((now, shown) => {
      const [check = "", outcome = ""] = shown.split(".");
      return updateBelief(model, now, check, outcome);
    }, createBelief());
    return Math.log(probabilities(model, belief)[model.causeAt.get(cause) ?? -1] ?? 1e-9);
  });
}

/** How much better the panel knows the causes of other homes of a world, with its 95 % interval. */
function gain(world: Planted, learnt: Learnt) {
  const held = drawSearches(flow, world, "held out", 600);
  return differenceOf(beliefs(withLearnt(learnt), held), beliefs(flow, held));
}

describe("what is learnt of one half of the homes", () => {
  test("makes true causes of the other half clearly likelier, in a world that differs from the trade's", () => {
    const { mean, half } = gain(apart, learn(drawSearches(flow, apart, "training", 2000)));
    expect(mean - half).toBeGreaterThan(0.05);
  });

  test("does no harm where the world is as the trade judges", () => {
    const { mean, half } = gain(asJudged, learn(drawSearches(flow, asJudged, "training", 2000)));
    expect(mean + half).toBeGreaterThan(0);
    expect(mean).toBeGreaterThan(-0.02);
  });

  test("is hardly anything where only fifty searches have ended", () => {
    const learnt = learn(drawSearches(flow, apart, "training", 50));
    for (const { is, was } of learnt.causes) expect(Math.abs(is - was)).toBeLessThan(0.03);
    for (const { is, was } of learnt.errors) expect(Math.abs(is - was)).toBeLessThan(0.03);
    expect(gain(apart, learnt).mean).toBeGreaterThan(-0.01);
  });
});

describe("rates of error", () => {
  test("rise where people err twice as often as the trade judges, and stay where they do not", () => {
    const rateOf = (learnt: Learnt) => learnt.errors.find(({ error }) => error === "error-look");
    const high = rateOf(learn(drawSearches(flow, apart, "training", 2000)));
    expect(high?.is).toBeGreaterThan(0.15);
    expect(high?.hasMoved).toBe(true);
    const same = rateOf(learn(drawSearches(flow, asJudged, "training", 2000)));
    expect(Math.abs((same?.is ?? 0) - 0.1)).toBeLessThan(0.03);
  });

  test("are those of the trade where nobody has said what was seen", () => {
    const searches = createSearches();
    for (const { line } of drawSearches(flow, apart, "training", 50)) {
      const { seen: _, vain: __, ...old } = { ...line, format: 1 as const };
      countSearch(searches, flow, old);
    }
    expect(learnFrom(flow, searches, 300).errors).toEqual([]);
  });
});

describe("a search", () => {
  test("tells against what was put right in vain, and for what was put right with success", () => {
    const [one] = drawSearches(flow, asJudged, "one", 1);
    const seen = { ...(one as Drawn).line, seen: ["power.alive"], scenario: "no-ice-plumbed" };
    const shareOf = (line: Drawn["line"]) => {
      const learnt = learn(
        Array.from({ length: 20 }, () => ({ cause: "", line })),
        1,
      );
      return learnt.causes.find(({ cause }) => cause === "switched-off")?.is ?? Number.NaN;
    };
    const plain = shareOf({ ...seen, outcome: "professional", cause: null });
    expect(shareOf({ ...seen, outcome: "professional", cause: null, vain: ["switched-off"] })).toBeLessThan(
      plain,
    );
    expect(shareOf({ ...seen, outcome: "fixed", cause: "switched-off" })).toBeGreaterThan(2 * plain);
  });

  test("says nothing by checks and causes that flows/ has not", () => {
    const [one] = drawSearches(flow, asJudged, "one", 1);
    const line = { ...(one as Drawn).line, outcome: "professional", cause: null } as const;
    const strange = {
      ...line,
      seen: ["no-such.check", "power.no-such", "constructor.name"],
      vain: ["constructor"],
    };
    expect(countSearch(createSearches(), flow, strange)).toBe(false);
  });
});
