import type { Flow } from "../flow.ts";
import type { Graph } from "./graph.ts";
import type { Problem } from "./problem.ts";

/**
 * Every hazardous step lies behind its gate, in the same visit: walking back from the step, each way meets a
 * confirmed gate for each of its hazards before it leaves the step's check. Undo, resume and reports of danger
 * are edges like any other, so no such way can slip past.
 */
export function findUngated(flow: Flow, graph: Graph): Problem[] {
  const problems: Problem[] = [];
  const into = new Map<string, typeof graph.edges>();
  for (const edge of graph.edges) into.set(edge.to, [...(into.get(edge.to) ?? []), edge]);
  for (const [leaf, { meta, ancestors }] of graph.leaves) {
    const home = ancestors.at(-1);
    for (const hazard of meta?.hazards ?? []) {
      if (flow.hazards[hazard]?.gate !== "required") continue;
      const open = [leaf];
      const seen = new Set(open);
      while (open.length) {
        const here = open.pop() as string;
        const outside = graph.leaves.get(here)?.ancestors.at(-1) !== home;
        if (outside || here === graph.start) {
          problems.push({
            code: "ungated-hazard",
            state: leaf,
            message: `"${leaf}" exposes a person to "${hazard}", but can be entered from "${here}" without a gate that covers it.`,
          });
          break;
        }
        for (const { from, event } of into.get(here) ?? []) {
          if (seen.has(from) || isGatePassed(flow, graph, from, event, hazard)) continue;
          seen.add(from);
          open.push(from);
        }
      }
    }
  }
  return problems;
}

function isGatePassed(flow: Flow, graph: Graph, from: string, event: string, hazard: string): boolean {
  const gate = graph.leaves.get(from)?.meta?.gate;
  return (
    gate !== undefined && event === "answered.ready" && (flow.gates[gate]?.covers ?? []).includes(hazard)
  );
}

/** Checks that work at a dangerous place without saying so. */
export function findUndeclared(flow: Flow): Problem[] {
  return Object.values(flow.checks).flatMap((check) => {
    const least = flow.access[flow.stations.access[check.station] ?? ""] ?? [];
    const own = [...(flow.access[check.access] ?? []), ...(check.hazards ?? [])];
    return least
      .filter((hazard) => !own.includes(hazard))
      .map((hazard) => ({
        code: "undeclared-hazard",
        state: check.id,
        message: `Check "${check.id}" works at "${check.station}", which exposes a person to "${hazard}", but does not say so.`,
      }));
  });
}
