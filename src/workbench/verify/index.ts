import type { ChartConfig } from "../../chart/index.ts";
import { composeChart } from "../../compile/index.ts";
import type { Flow } from "../../guide/index.ts";
import { findLostWays, findTrapped } from "./exits.ts";
import { findKeptOpen, findUndeclared, findUngated, findUngatedCare } from "./gates.ts";
import { graphOf } from "./graph.ts";
import { findUnprepared } from "./preparations.ts";
import { type Problem, tellOfChart } from "./words-of-chart.ts";

export { graphOf, reach } from "./graph.ts";
export type { FileProblem, Place } from "./problem.ts";
export type { ReadSource, Source, Unreadable } from "./source.ts";

export { type FolderToVerify, verifyFolder } from "./verify-folder.ts";
export type { Problem } from "./words-of-chart.ts";

/**
 * Everything wrong with the composed chart, all at once; an empty list is the proof that every state reaches an
 * ending, that no path enters a hazardous step except through its gate and in the state that it needs, that no gate is
 * short for whoever has not just confirmed it in full, and that nothing changed by us is forgotten.
 * @param config the chart to prove; composed from the flow unless a test brings a damaged copy
 */
export function verifyChart(flow: Flow, config: ChartConfig = composeChart(flow)): Problem[] {
  const graph = graphOf(config);
  return [
    ...findLostWays(graph),
    ...findTrapped(graph),
    ...findUngated(flow, graph),
    ...findKeptOpen(graph),
    ...findUngatedCare(flow),
    ...findUndeclared(flow),
    ...findUnprepared(flow, graph),
  ].map(tellOfChart);
}
