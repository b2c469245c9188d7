import { careTimes, type Flow } from "../../guide/index.ts";
import type { Graph } from "./graph.ts";
import type { ChartFault } from "./words-of-chart.ts";

const resumed = "session-resumed";

/**
 * Every hazardous step lies behind its gate, in the same visit: walking back from the step, each way meets a
 * confirmed gate for each of its hazards before it leaves the step's check. Undo and reports of danger are edges
 * like any other; coming back after an interruption begins a new visit, wherever it starts from.
 */
export function findUngated(flow: Flow, graph: Graph): ChartFault[] {
  const problems: ChartFault[] = [];
  const into = new Map<string, typeof graph.edges>();
  for (const edge of graph.edges) into.set(edge.to, [...(into.get(edge.to) ?? []), edge]);
  for (const [leaf, { meta, ancestors }] of graph.leaves) {
    const home = ancestors.at(-1);
    for (const hazard of meta?.hazards ?? []) {
      // A hazard that nobody described counts as one that needs its gate.
      if (flow.hazards[hazard]?.gate === "none") continue;
      const open = [leaf];
      const seen = new Set(open);
      while (open.length) {
        const here = open.pop() as string;
        const ways = into.get(here) ?? [];
        const outside = graph.leaves.get(here)?.ancestors.at(-1) !== home;
        const again = ways.find(({ event }) => event === resumed);
        if (outside || here === graph.start || again) {
          problems.push({ code: "ungated-hazard", state: leaf, hazard, from: again?.from ?? here });
          break;
        }
        for (const { from, event } of ways) {
          if (seen.has(from) || isGatePassed(flow, graph, from, event, hazard)) continue;
          seen.add(from);
          open.push(from);
        }
      }
    }
  }
  return problems;
}

/** Turns behind a confirmed gate where coming back after an interruption does not ask that gate again. */
export function findKeptOpen(graph: Graph): ChartFault[] {
  const homeOf = (leaf: string) => graph.leaves.get(leaf)?.ancestors.at(-1);
  const open = graph.edges
    .filter(({ from, event }) => graph.leaves.get(from)?.meta?.gate && event === "answered.ready")
    .map(({ to }) => to);
  const behind = new Set(open);
  while (open.length) {
    const here = open.pop() as string;
    for (const { from, to, event } of graph.edges) {
      if (from !== here || event === resumed || behind.has(to) || homeOf(to) !== homeOf(here)) continue;
      behind.add(to);
      open.push(to);
    }
  }
  const asking = new Set(graph.edges.filter(({ event }) => event === resumed).map(({ from }) => from));
  return [...behind]
    .filter((leaf) => graph.leaves.get(leaf)?.meta && !asking.has(leaf))
    .map((state) => ({ code: "gate-kept-open", state }));
}

function isGatePassed(flow: Flow, graph: Graph, from: string, event: string, hazard: string): boolean {
  const gate = graph.leaves.get(from)?.meta?.gate;
  return (
    gate !== undefined && event === "answered.ready" && (flow.gates[gate]?.covers ?? []).includes(hazard)
  );
}

/** Steps of care that expose a person to something that needs a gate, with none before them that covers it. */
export function findUngatedCare({ care, access, hazards, gates }: Flow): ChartFault[] {
  return careTimes.flatMap((time) =>
    care[time].flatMap(({ id, access: exposes, gate = "" }, place) =>
      (access[exposes] ?? [])
        // A hazard that nobody described counts as one that needs its gate.
        .filter((hazard) => hazards[hazard]?.gate !== "none" && !gates[gate]?.covers.includes(hazard))
        .map((hazard) => ({ code: "ungated-care" as const, state: id, time, place, hazard })),
    ),
  );
}

/** Checks that work at a dangerous place without saying so. */
export function findUndeclared(flow: Flow): ChartFault[] {
  return Object.values(flow.checks).flatMap((check) => {
    const least = flow.access[flow.stations.access[check.station] ?? ""] ?? [];
    const own = [...(flow.access[check.access] ?? []), ...(check.hazards ?? [])];
    return least
      .filter((hazard) => !own.includes(hazard))
      .map((hazard) => ({
        code: "undeclared-hazard" as const,
        state: check.id,
        station: check.station,
        hazard,
      }));
  });
}
