import type { Flow } from "../../../src/guide/index.ts";
import { bestNext } from "./best-next.ts";
import { luck, pick } from "./chance.ts";
import { createHome, type Home } from "./home.ts";
import { fixedList, type Policy, scenarioList } from "./list-policies.ts";
import { createScenes } from "./scene.ts";
import { measureSmallCases, type SmallCases } from "./small-cases.ts";
import { type Score, type Summary, scoreOf, summarise } from "./tally.ts";
import { createVisit } from "./visit.ts";

/** The ways of going about it that are compared, on the same homes. */
export const policies: { id: PolicyId; name: string; create: (flow: Flow) => Policy }[] = [
  { id: "list-sells", name: "fixed list, then an ice maker", create: () => fixedList("ice-maker") },
  { id: "list-calls", name: "fixed list, then a professional", create: () => fixedList("professional") },
  { id: "scenario-list", name: "list of the scenario", create: scenarioList },
  { id: "ours", name: "ours", create: bestNext },
];

export type PolicyId = "list-sells" | "list-calls" | "scenario-list" | "ours";

export type Results = {
  homes: number;
  seed: number;
  /** By policy: over all homes, and by scenario. */
  all: Record<PolicyId, Summary>;
  byScenario: Record<string, Record<PolicyId, Summary>>;
  small: SmallCases;
};

/**
 * Sends every policy through the same simulated homes. Equal seeds give equal results.
 * @param small which causes of each scenario, by falling prior, begin a small case for the exact search
 */
export function runHouseholds(flow: Flow, homes: number, seed = 1, small = [0, 6]): Results {
  const scenes = createScenes(flow);
  const shares = scenes.map(({ share }) => share);
  const drawn = Array.from({ length: homes }, (_, at): Home => {
    const number = seed * 1_000_003 + at;
    const scene = scenes[pick(shares, luck(number, "scene"))]?.scene;
    if (!scene) throw new Error("There is no scenario");
    return createHome(scene, number);
  });
  const scores = policies.map(({ create }) => {
    const policy = create(flow);
    return drawn.map((home): Score => {
      const visit = createVisit(home);
      policy(visit);
      return scoreOf(visit);
    });
  });
  const summaries = (wanted: (home: Home) => boolean) =>
    Object.fromEntries(
      policies.map(({ id }, policy) => [
        id,
        summarise((scores[policy] ?? []).filter((_, at) => wanted(drawn[at] as Home))),
      ]),
    ) as Record<PolicyId, Summary>;
  const scenarios = [...new Set(scenes.map(({ scene }) => scene.scenario))];
  return {
    homes,
    seed,
    all: summaries(() => true),
    byScenario: Object.fromEntries(
      scenarios.map((id) => [id, summaries(({ scene }) => scene.scenario === id)]),
    ),
    small: measureSmallCases(
      scenes.map(({ scene }) => scene),
      small,
    ),
  };
}
