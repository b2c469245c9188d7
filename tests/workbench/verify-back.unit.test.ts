import { expect, test } from "vitest";
import type { ChartConfig, StateConfig } from "../../src/chart/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import { findUngated } from "../../src/workbench/verify/gates.ts";
import { graphOf, withWaysBack } from "../../src/workbench/verify/graph.ts";

/**
 * A hub, a step behind a gate, and a further question beyond the step: what one may come to by taking an answer
 * back. By hand, so that each edge can be seen.
 */
function chart(coming?: string): ChartConfig {
  const meta = (turn: string, more = {}) => ({ turn, kind: "choice" as const, check: "c", ...more });
  const leaf = (id: string, more: object, on: Record<string, string>): StateConfig => ({
    id,
    meta: meta(id, more),
    on: Object.fromEntries(Object.entries(on).map(([event, target]) => [event, { target: `#${target}` }])),
  });
  const step = { hazards: ["mains"] };
  const states = {
    gate: leaf(
      "s/c/gate",
      { gate: "panel", hazards: [] },
      { "answered.ready": "s/c/step", "answered.cannot": "hub" },
    ),
    step: leaf("s/c/step", step, { "answered.yes": "hub", ...(coming ? { "session-resumed": coming } : {}) }),
  };
  return {
    id: "small",
    initial: "hub",
    states: {
      hub: leaf("hub", {}, { "answered.go": "s/c", "answered.end": "end" }),
      s: { id: "s", initial: "c", states: { c: { id: "s/c", initial: "gate", states } } },
      end: leaf("end", {}, {}),
    },
  };
}

const flow = {
  hazards: { mains: { signal: "danger", gate: "required" } },
  gates: { panel: { covers: ["mains"] } },
} as unknown as Flow;

test("taking back the answer of a step leads to its gate, so the step stays behind it", () => {
  const graph = withWaysBack(graphOf(chart("s/c/gate")));
  const back = graph.edges.filter(({ from, event }) => from === "hub" && event === "answer-taken-back");
  expect(back.map(({ to }) => to).sort()).toEqual(["s/c/gate", "s/c/gate"]);
  expect(findUngated(flow, graph)).toEqual([]);
});

test("a step that asks no gate when it is come back to is met without one", () => {
  const graph = graphOf(chart());
  expect(findUngated(flow, graph)).toEqual([]);
  expect(findUngated(flow, withWaysBack(graph)).map(({ state }) => state)).toEqual(["s/c/step"]);
});
