import { rulesOf } from "../../../src/advice/index.ts";
import type { Opening } from "../../../src/advice/is-possible.ts";
import { createInput, modelOf } from "../../../src/advice/model-of.ts";
import { type Route, routesOf } from "../../../src/advice/routes-of.ts";
import { stakesOf } from "../../../src/advice/stakes-of.ts";
import { isWaitForIce } from "../../../src/advice/wait-for-ice.ts";
import { createModel, type Model, type Stakes } from "../../../src/diagnosis/index.ts";
import type { Flow } from "../../../src/guide/flow.ts";

/** One scenario after one opening, as a stage for simulated homes: what we believe of it, and what its rules allow. */
export type Scene = {
  flow: Flow;
  /** The scenario, and with it the opening. */
  id: string;
  scenario: string;
  opening: Opening;
  /** Our knowledge: the scenario's causes and checks. */
  model: Model;
  stakes: Stakes;
  /** The same causes with every check there is, for a list that asks everybody everything. */
  world: Model;
  /** What its chart allows and what is proved in it, by what it remembers. */
  rules: ReturnType<typeof rulesOf>;
  routes: Record<string, Record<string, Route>>;
};

export function createScene(flow: Flow, id: string, opening: Opening): Scene {
  const model = modelOf(flow, id, opening);
  const everything = Object.keys(flow.checks).filter((check) => !isWaitForIce(flow.checks[check]));
  const input = createInput(flow, id, everything);
  const causes = input.causes.filter((cause) => model.causeAt.has(cause.id));
  return {
    flow,
    id: [id, ...Object.values(opening)].join(" "),
    scenario: id,
    opening,
    model,
    stakes: stakesOf(flow, id),
    world: createModel({ ...input, causes }),
    rules: rulesOf(flow, id),
    routes: Object.fromEntries(Object.values(flow.checks).map((check) => [check.id, routesOf(flow, check)])),
  };
}

/** Every scenario with the openings that lead to it, and how often in a hundred homes of that scenario. */
export function createScenes(flow: Flow): { scene: Scene; share: number }[] {
  return Object.keys(flow.scenarios).flatMap((id) =>
    openingsOf(id).map(({ opening, share }) => ({ scene: createScene(flow, id, opening), share })),
  );
}

/** Judgement: one machine in ten has a tank, where the scenario leaves that open. */
function openingsOf(scenario: string): { opening: Opening; share: number }[] {
  const said = (supply: string, changed: string) => ({
    "opening.supply": supply,
    "opening.changed": changed,
  });
  if (scenario === "no-ice-tank") return [{ opening: said("tank", "nothing"), share: 100 }];
  if (scenario === "after-change")
    return [
      { opening: said("plumbed", "new-filter"), share: 40 },
      { opening: said("plumbed", "moved"), share: 40 },
      { opening: said("plumbed", "new"), share: 20 },
    ];
  if (scenario === "no-ice-plumbed") return [{ opening: said("plumbed", "nothing"), share: 100 }];
  return [
    { opening: said("plumbed", "nothing"), share: 90 },
    { opening: said("tank", "nothing"), share: 10 },
  ];
}
