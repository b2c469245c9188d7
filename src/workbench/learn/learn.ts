import { learnableCauses } from "../../compile/index.ts";
import type { Flow } from "../../guide/index.ts";
import type { InsightLine } from "../../insight/index.ts";
import { betaQuantile } from "./beta.ts";

/** How often each cause was established, by scenario. */
export type CauseCounts = Map<string, Map<string, number>>;

export type Learnt = {
  cause: string;
  /** How often it was established. */
  count: number;
  /** Its share among all that were established: as the trade judges, and as it is now, with its 95 % interval. */
  was: number;
  is: number;
  low: number;
  high: number;
  /** Homes in 1,000, as flows/machine/causes/ has it: before, and as it would be. */
  share: { was: number; is: number };
  /** The interval has no room for the trade's judgement. */
  hasMoved: boolean;
};

/**
 * Counts an ending whose cause was established; false for a line that says nothing of causes, or of one that no check of
 * the scenario can settle.
 */
export function countCause(counts: CauseCounts, flow: Flow, line: InsightLine): boolean {
  if (line.what !== "ended" || !line.scenario || !line.cause || !flow.scenarios[line.scenario]) return false;
  const { scenario, cause } = line;
  if (!Object.hasOwn(learnableCauses(flow, scenario), cause)) return false;
  const of = counts.get(scenario) ?? new Map<string, number>();
  counts.set(scenario, of.set(cause, (of.get(cause) ?? 0) + 1));
  return true;
}

/**
 * The shares of causes by what was established, with the trade's judgement as a Dirichlet prior. The mix of scenarios is
 * taken as it came; a cause that no check can settle keeps its share, as nothing would ever be counted for it.
 * @param worth for how many searches the judgement counts
 */
export function learnShares(flow: Flow, counts: CauseCounts, worth: number): Learnt[] {
  const expected = new Map<string, number>();
  const found = new Map<string, number>();
  let all = 0;
  for (const [scenario, of] of counts) {
    const searches = [...of.values()].reduce((sum, count) => sum + count, 0);
    all += searches;
    for (const [cause, share] of Object.entries(learnableCauses(flow, scenario)))
      expected.set(cause, (expected.get(cause) ?? 0) + share * searches);
    for (const [cause, count] of of) found.set(cause, (found.get(cause) ?? 0) + count);
  }
  return [...expected].map(([cause, searches]) => {
    const count = found.get(cause) ?? 0;
    const was = searches / all;
    const [a, b] = [worth * was + count, worth * (1 - was) + all - count];
    const is = a / (a + b);
    const [low, high] = b > 0 ? [betaQuantile(0.025, a, b), betaQuantile(0.975, a, b)] : [1, 1];
    const before = flow.machine.causes[cause]?.share ?? 0;
    const share = { was: before, is: Number(Math.min(1000, (before * is) / was).toPrecision(3)) };
    return { cause, count, was, is, low, high, share, hasMoved: was < low || was > high };
  });
}
