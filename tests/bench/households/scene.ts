import { type Adviser, createAdviser, type Subject } from "../../../src/advice/index.ts";
import { createMemory } from "../../../src/chart/index.ts";
import { compileFlow } from "../../../src/compile/index.ts";
import type { OpeningAnswers as Opening } from "../../../src/compile/is-possible.ts";
import { amongAfter, createInput } from "../../../src/compile/model-of.ts";
import { type Route, routesOf } from "../../../src/compile/routes-of.ts";
import { isWaitForIce } from "../../../src/compile/wait-for-ice.ts";
import { type CauseInput, createModel, type Model, type Stakes } from "../../../src/diagnosis/index.ts";
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
  /** The scenario as the product's own adviser sees it, and that adviser. */
  subject: Subject;
  adviser: Adviser;
  routes: Record<string, Record<string, Route>>;
};

export function createScene(flow: Flow, id: string, opening: Opening, subject: Subject): Scene {
  const among = amongAfter(flow, id, opening);
  const own = createInput(flow, id, among.checks);
  const model = createModel({ ...own, causes: weighed(own.causes, among) });
  const memory = createMemory();
  for (const [turn, answer] of Object.entries(opening)) memory.findings[turn] = { answer, at: "" };
  const everything = Object.keys(flow.checks).filter((check) => !isWaitForIce(flow.checks[check]));
  const input = createInput(flow, id, everything);
  const causes = weighed(input.causes, among);
  return {
    flow,
    id: [id, ...Object.values(opening)].join(" "),
    scenario: id,
    opening,
    model,
    stakes: subject.diagnosis.stakes,
    world: createModel({ ...input, causes }),
    subject,
    adviser: createAdviser(subject, memory),
    routes: Object.fromEntries(Object.values(flow.checks).map((check) => [check.id, routesOf(flow, check)])),
  };
}

/** The causes that an opening leaves, with their weights then. */
function weighed(
  causes: readonly CauseInput[],
  among: { causes: string[]; weights: number[] },
): CauseInput[] {
  return causes.flatMap((cause) => {
    const weight = among.weights[among.causes.indexOf(cause.id)];
    return weight === undefined ? [] : [{ ...cause, weight }];
  });
}

/** Every scenario with the openings that lead to it, and how often in a hundred homes of that scenario. */
export function createScenes(flow: Flow): { scene: Scene; share: number }[] {
  return compileFlow(flow).scenarios.flatMap((subject) =>
    openingsOf(subject.id).map(({ opening, share }) => ({
      scene: createScene(flow, subject.id, opening, subject),
      share,
    })),
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
