import { expect, test } from "vitest";
import { compileFlow } from "../../src/compile/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import { findOpenHazard } from "../../src/pack/find-open-hazard.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { knownDangers, placesOf } from "../../src/workbench/build/panel-data.ts";

const flow = readFlow();
const known = knownDangers(flow);

/** What is open in the charts of a flow, by scenario. */
function openIn(edited: Flow): (string | null)[] {
  const { start, scenarios } = compileFlow(edited);
  return scenarios.map(({ id, chart, flow: own }) =>
    findOpenHazard(chart, id, { ...start.flow, ...own }, placesOf(edited), known),
  );
}

test("a verified flow leaves no hazard without its gate", () => {
  expect(openIn(flow)).toEqual(Object.keys(flow.scenarios).map(() => null));
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
