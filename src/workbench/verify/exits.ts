import { type Graph, reach } from "./graph.ts";
import type { ChartFault } from "./words-of-chart.ts";

/** Ways out that are always there and so say nothing of whether a turn leads on. */
export const emergency = /^(danger-reported\..*|help-asked|ice-returned|trouble-returned)$/;

/** 'Not sure' can be reported of any flow; a person must be able to say what the danger is. */
const isNamedDanger = (event: string) =>
  event.startsWith("danger-reported.") && event !== "danger-reported.not-sure";

/** States that nothing leads to, targets that do not exist, and states from which answering reaches no ending. */
export function findLostWays(graph: Graph): ChartFault[] {
  const endings = [...graph.leaves].filter(([, { meta }]) => meta?.kind === "ending").map(([leaf]) => leaf);
  const reached = reach(graph, [graph.start], "forward");
  const answering = { ...graph, edges: graph.edges.filter(({ event }) => !emergency.test(event)) };
  const ending = reach(answering, endings, "back");
  const leaves = [...graph.leaves.keys()];
  const at = (code: "unreachable" | "dead-end", states: string[]) => states.map((state) => ({ code, state }));
  return [
    ...graph.broken.map(({ from, to }) => ({ code: "unknown-target" as const, state: from, to })),
    ...at(
      "unreachable",
      leaves.filter((leaf) => !reached.has(leaf)),
    ),
    ...at(
      "dead-end",
      leaves.filter((leaf) => !ending.has(leaf)),
    ),
  ];
}

/** Turns a person could not leave by saying so: no way to stop for danger or to ask a human. */
export function findTrapped(graph: Graph): ChartFault[] {
  const exits = new Map<string, Set<string>>();
  for (const { from, event } of graph.edges) exits.set(from, (exits.get(from) ?? new Set()).add(event));
  return [...graph.leaves]
    .filter(([, { meta }]) => meta && meta.kind !== "ending")
    .flatMap(([leaf]) => {
      const own = [...(exits.get(leaf) ?? [])];
      const missing: ("danger" | "help")[] = [];
      if (!own.some(isNamedDanger)) missing.push("danger");
      if (!own.includes("help-asked")) missing.push("help");
      return missing.map((lacks) => ({ code: "no-way-out" as const, state: leaf, lacks }));
    });
}
