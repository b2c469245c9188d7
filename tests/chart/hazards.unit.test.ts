import { expect, test } from "vitest";
import { findOpenHazards } from "../../src/chart/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";

const flow = readFlow();

test("a verified flow leaves no hazard without its gate", () => {
  expect(findOpenHazards(flow, flow)).toEqual([]);
});

test("every gate of every check is needed: without it a hazard lies open", () => {
  const gated = Object.values(flow.checks).filter(({ gates }) => gates?.length);
  expect(gated.length).toBeGreaterThan(5);
  for (const { id } of gated) {
    const edited = structuredClone(flow);
    const check = edited.checks[id];
    if (check) check.gates = [];
    expect(findOpenHazards(edited, flow).map((each) => each.split(":")[0])).toContain(id);
  }
});
