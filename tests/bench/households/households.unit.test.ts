import { describe, expect, test } from "vitest";
import { learntFrom } from "../../../src/advice/learnt-from.ts";
import { createBelief, failedFix, probabilities, updateBelief } from "../../../src/diagnosis/index.ts";
import { readFlow } from "../../../src/workbench/build/flows-folder.ts";
import { counts } from "../../soak/counts.ts";
import { bestNext } from "./best-next.ts";
import { disturbance, luck, pick } from "./chance.ts";
import { drawHouseholds } from "./draw.ts";
import { createHome, observe } from "./home.ts";
import { fixedList } from "./list-policies.ts";
import { goalsOfHouseholds, reportHouseholds } from "./report.ts";
import { policies, runHouseholds } from "./run.ts";
import { createScenes } from "./scene.ts";
import { createVisit, doCheck, provedNow, waitForIce } from "./visit.ts";

const flow = readFlow();
const scenes = createScenes(flow).map(({ scene }) => scene);
const homes = Array.from({ length: 240 }, (_, seed) => {
  const scene = scenes[seed % scenes.length];
  if (!scene) throw new Error("no scenario");
  return createHome(scene, seed);
});

describe("what the flow files say of every scenario", () => {
  test("is a model: each outcome of its checks can be reached, and each cause can be found or needs a professional", () => {
    const [suspected, settled] = [new Set<string>(), new Set<string>()];
    for (const { model, routes } of scenes) {
      expect(model.causes.length).toBeGreaterThan(3);
      for (const check of model.checks)
        for (const { id } of check.outcomes)
          expect([check.id, id, routes[check.id]?.[id] !== undefined]).toEqual([check.id, id, true]);
      for (const [place, { id, remedy, proofs }] of model.causes.entries()) {
        const repaired = model.checks.some(({ repairs }) => repairs.some(({ cause }) => cause === place));
        suspected.add(id);
        if (repaired || proofs.length > 0 || remedy === "professional") settled.add(id);
      }
    }
    // Where one scenario suspects what it cannot find, another finds it.
    expect(settled).toEqual(suspected);
  });

  test("holds no filter of a machine with a tank, and no tank of a plumbed one", () => {
    for (const { model, opening } of scenes) {
      const tank = opening["opening.supply"] === "tank";
      expect(model.causeAt.has(tank ? "filter-clogged" : "tank-empty")).toBe(false);
    }
  });
});

describe("our choice, over homes of every scenario", () => {
  const ours = bestNext(flow);
  const visits = homes.map((home) => {
    const visit = createVisit(home);
    ours(visit);
    return visit;
  });

  test("comes to an ending within 40 checks", () => {
    for (const { ending, checks } of visits) {
      expect(ending).not.toBeNull();
      expect(checks).toBeLessThanOrEqual(40);
    }
  });

  test("never sells a part whose proof is not recorded", () => {
    const sales = visits.filter(({ ending }) => ending?.how === "part");
    expect(sales.length).toBeGreaterThan(5);
    for (const visit of sales) {
      const proved = provedNow(visit).map(({ cause }) => cause);
      expect(proved).toContain(visit.ending?.cause);
    }
  });
});

test("the belief read from a chart's memory is that of the answers as they came, failed fixes included", () => {
  for (const home of homes.slice(0, 150)) {
    const { model, stakes } = home.scene;
    const visit = createVisit(home);
    let belief = createBelief();
    for (const { id } of model.checks.slice(0, 8)) {
      const outcome = doCheck(visit, id);
      if (visit.ending) break;
      if (outcome) belief = updateBelief(model, belief, id, outcome);
      if (luck(home.seed, "wait", id) > 0.3) continue;
      const tried = visit.fixed;
      waitForIce(visit);
      if (visit.ending) break;
      for (const cause of tried) belief = failedFix(belief, cause, stakes.success);
    }
    if (visit.ending) continue;
    const learnt = learntFrom(home.scene.subject.diagnosis, model, visit.memory);
    expect(probabilities(model, learnt.belief)).toEqual(probabilities(model, belief));
    expect(new Set(learnt.fixed)).toEqual(new Set(visit.fixed.filter((id) => model.causeAt.has(id))));
  }
});

describe("simulated homes", () => {
  test("are the same for the same seed, whatever policy asks in whatever order", () => {
    const [home] = homes;
    if (!home) throw new Error("no home");
    const checks = home.scene.model.checks.map(({ id }) => id);
    const seen = (order: string[]) =>
      new Map(order.map((check) => [check, observe(home, check, home.faults)]));
    expect(seen([...checks].reverse())).toEqual(new Map([...seen(checks)].reverse()));
    expect(createHome(home.scene, home.seed)).toEqual(home);
  });

  test("have two faults in a tenth, drawn from priors that are off by up to 3 either way", () => {
    const many = Array.from({ length: 5000 }, (_, seed) => createHome(scenes[0] as (typeof scenes)[0], seed));
    const doubles = many.filter(({ faults }) => faults.length === 2).length / many.length;
    expect(doubles).toBeGreaterThan(0.085);
    expect(doubles).toBeLessThan(0.115);
    const factors = Array.from({ length: 5000 }, (_, seed) => disturbance(seed, "prior", 3));
    expect(Math.min(...factors)).toBeGreaterThanOrEqual(1 / 3);
    expect(Math.max(...factors)).toBeLessThanOrEqual(3);
    expect(factors.filter((factor) => factor > 1).length / factors.length).toBeCloseTo(0.5, 1);
  });

  test("draw outcomes in proportion to their weights", () => {
    const counts = [0, 0, 0];
    for (let seed = 0; seed < 20_000; seed++) {
      const place = pick([1, 2, 5], luck(seed, "x"));
      counts[place] = (counts[place] ?? 0) + 1;
    }
    [1 / 8, 2 / 8, 5 / 8].forEach((share, at) => {
      expect((counts[at] ?? 0) / 20_000).toBeCloseTo(share, 1);
    });
  });
});

test("the fixed list that sells an ice maker at its end sells more wrong parts than the one that sends for somebody", () => {
  const wrong = (last: "ice-maker" | "professional") =>
    homes.filter((home) => {
      const visit = createVisit(home);
      fixedList(last)(visit);
      return visit.bought.some(({ right }) => !right);
    }).length;
  expect(wrong("ice-maker")).toBeGreaterThan(wrong("professional"));
});

describe("the report", () => {
  const size = counts.homes;
  const results = runHouseholds(flow, size, 1, [8]);

  test("shows every policy on the same homes: ours costs less than either list, and less than the scenario's own order", () => {
    const { all } = results;
    for (const { id } of policies) expect(all[id].homes).toBe(size);
    for (const other of ["list-sells", "list-calls", "scenario-list"] as const)
      expect(all.ours.cost).toBeLessThan(all[other].cost);
  });

  test("holds the goals as far as so few homes can show: each share within two standard errors", () => {
    const { ours, "list-calls": list } = results.all;
    // Of a share p among n homes: √(p(1−p)/n), as for any binomial share.
    const within = (share: number) => 2 * Math.sqrt((share * (1 - share)) / size);
    expect(ours.right).toBeGreaterThan(0.8 - within(0.8));
    expect(ours.wrongPart).toBeLessThan(0.02 + within(0.02));
    expect(ours.needlessCall).toBeLessThan(0.16 + within(0.16));
    expect(ours.minutes).toBeLessThan(list.minutes / 2);
    expect(ours.hours).toBeLessThan(list.hours / 2);
    expect(results.small.ours).toBeLessThanOrEqual(results.small.bound * 1.05);
  });

  test("says which goals are met and which are not", () => {
    const text = reportHouseholds(results);
    for (const { met, says } of goalsOfHouseholds(results))
      expect(text).toContain(`${met ? "met    " : "NOT MET"}  ${says}`);
  });

  test("is drawn with the number written at each bar", () => {
    const svg = drawHouseholds(results);
    expect(svg.match(/<rect /g)?.length).toBe(1 + 6 * policies.length);
    expect(svg).toContain(`>${results.all.ours.minutes.toFixed(0)}</text>`);
  });
});
