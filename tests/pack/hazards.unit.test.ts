import { expect, test } from "vitest";
import type { Flow } from "../../src/guide/index.ts";
import { findOpenHazard } from "../../src/pack/find-open-hazard.ts";
import { knownDangers, placesOf } from "../../src/workbench/build/panel-data.ts";
import { compiledOnce } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";

const flow = ownFlow;
const known = knownDangers(flow);

/** What is open in the charts of a flow, by scenario. */
function openIn(edited: Flow): (string | null)[] {
  const { start, scenarios } = compiledOnce(edited);
  return scenarios.map(({ id, chart, flow: own }) =>
    findOpenHazard(chart, id, { ...start.flow, ...own }, placesOf(edited), known),
  );
}

test("a verified flow leaves no hazard without its gate", () => {
  expect(openIn(flow)).toEqual(Object.keys(flow.scenarios).map(() => null));
});

test("an ending for today that holds turns, or is none, is judged as any check", () => {
  const { start, scenarios } = compiledOnce(flow);
  const [scenario] = scenarios.filter(({ chart, id }) => chart.states[id]?.states?.later);
  if (!scenario) throw new Error("No scenario has an ending for today");
  const { id, chart, flow: own } = scenario;
  for (const edit of [{ states: {} }, { meta: { turn: "later.end", kind: "question", check: null } }]) {
    const edited = structuredClone(chart);
    Object.assign(edited.states[id]?.states?.later as object, edit);
    expect(findOpenHazard(edited, id, { ...start.flow, ...own }, placesOf(flow), known)).toContain(
      'where the check "later" lies',
    );
  }
});

test("every gate of every check is needed: without it a hazard lies open", () => {
  const gated = Object.values(flow.checks).filter(({ gates }) => gates?.length);
  expect(gated.length).toBeGreaterThan(5);
  for (const { id } of gated) {
    const edited = structuredClone(flow);
    const check = edited.checks[id];
    if (check) check.gates = [];
    const scenarios = Object.entries(flow.scenarios).filter(
      ([, { checks }]) => check?.restores || checks.some((one) => one.check === id),
    );
    edited.scenarios = Object.fromEntries(scenarios.slice(0, 1));
    expect(openIn(edited)[0], id).toContain(`without a gate (${id}: `);
  }
});
