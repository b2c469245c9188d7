import { type Graph, reach } from "./graph.ts";
import type { Problem } from "./problem.ts";

/** Ways out that are always there and so say nothing of whether a turn leads on. */
export const emergency = /^(danger-reported\..*|help-asked|ice-returned)$/;

/** 'Not sure' can be reported of any flow; a person must be able to say what the danger is. */
const isNamedDanger = (event: string) =>
  event.startsWith("danger-reported.") && event !== "danger-reported.not-sure";

/** States that nothing leads to, targets that do not exist, and states from which answering reaches no ending. */
export function findLostWays(graph: Graph): Problem[] {
  const endings = [...graph.leaves].filter(([, { meta }]) => meta?.kind === "ending").map(([leaf]) => leaf);
  const reached = reach(graph, [graph.start], "forward");
  const answering = { ...graph, edges: graph.edges.filter(({ event }) => !emergency.test(event)) };
  const ending = reach(answering, endings, "back");
  const lost = [...graph.leaves.keys()];
  return [
    ...graph.broken.map(({ from, to }) => ({
      code: "unknown-target",
      state: from,
      message: `"${from}" goes to "${to}", which does not exist.`,
    })),
    ...lost
      .filter((leaf) => !reached.has(leaf))
      .map((leaf) => ({
        code: "unreachable",
        state: leaf,
        message: `Nothing leads to "${leaf}".`,
      })),
    ...lost
      .filter((leaf) => !ending.has(leaf))
      .map((leaf) => ({
        code: "dead-end",
        state: leaf,
        message: `From "${leaf}" no answer leads to an ending.`,
      })),
  ];
}

/** Turns a person could not leave by saying so: no way to stop for danger or to ask a human. */
export function findTrapped(graph: Graph): Problem[] {
  const exits = new Map<string, Set<string>>();
  for (const { from, event } of graph.edges) exits.set(from, (exits.get(from) ?? new Set()).add(event));
  return [...graph.leaves]
    .filter(([, { meta }]) => meta && meta.kind !== "ending")
    .flatMap(([leaf]) => {
      const own = [...(exits.get(leaf) ?? [])];
      const missing = [
        own.some(isNamedDanger) ? null : "to report danger",
        own.includes("help-asked") ? null : "to ask for a person",
      ].filter((one) => one !== null);
      return missing.map((way) => ({
        code: "no-way-out",
        state: leaf,
        message: `At "${leaf}" there is no way ${way}.`,
      }));
    });
}
