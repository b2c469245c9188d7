import { checkRange, fromMillilitres, type RangeProblem } from "../../measuring/index.ts";
import { readingBounds } from "../bounds.ts";
import type { FlowLimits } from "./limits.ts";
import type { FlowReading, FlowRun } from "./reading.ts";

/** A problem with one of the two numbers of a run, in the unit in which it was typed. */
export type FlowProblem = RangeProblem & { field: "volume" | "seconds" };

/** What cannot be right about a run. No water at all is a result, not a problem. */
export function checkFlowRun(run: FlowRun, limits: FlowLimits): FlowProblem[] {
  const most = fromMillilitres(limits.largestMillilitres, run.unit);
  const volume = checkRange(run.volume, { min: 0, max: most });
  const seconds = checkRange(run.seconds, { min: limits.shortestSeconds, max: limits.longestSeconds });
  return [
    ...(volume ? [{ ...volume, field: "volume" as const }] : []),
    ...(seconds ? [{ ...seconds, field: "seconds" as const }] : []),
  ];
}

/** The first thing that cannot be right about a reading, or null. No run at all is a run too few. */
export function checkFlow({ runs }: FlowReading, limits: FlowLimits): RangeProblem | null {
  if (!runs.length) return checkRange(0, { min: 1, max: readingBounds.runs });
  return runs.flatMap((run) => checkFlowRun(run, limits))[0] ?? null;
}
