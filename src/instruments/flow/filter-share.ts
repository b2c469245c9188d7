import { type Band, quotient, rangeOf, type Verdict } from "../../measuring/index.ts";
import { flowOf, onScales } from "./assess.ts";
import type { FlowLimits } from "./limits.ts";
import type { FlowReading } from "./reading.ts";

/** The share of the water's pressure that is lost in the filter, 0 to 1, and the range in which the true one lies. */
export type FilterShare = { share: number; range: Band };

/** Where the water is held back, as far as flow and supply tell. */
export type SlowPoint = "filter" | "supply" | "valve" | "supply-or-valve" | "unclear";

/**
 * The share of the pressure that the filter takes: 1 − (Q with it / Q without it)². Holds for a fixed supply and a
 * circuit whose loss grows with the square of the flow, whatever the filter's own law; the supply cancels. Derived
 * from the rule for orifices, Q ∝ √Δp: nine tenths of the flow mean 19 %, seven tenths 51 %, half 75 %.
 *
 * Expects runs that `checkFlowRun` finds no fault with. Never throws: null where there is nothing to compare, because
 * no water came without the filter, or there was no time.
 */
export function assessFilterShare(
  withFilter: FlowReading,
  without: FlowReading,
  limits: FlowLimits,
): FilterShare | null {
  const [first, ...others] = [...withFilter.runs, ...without.runs];
  // The same jug twice is wrong by the same fraction twice, which the ratio does not see.
  const alike = first && others.every((run) => onScales(run) === onScales(first));
  const applied = alike ? { ...limits, jugScale: 0 } : limits;
  const ratio = quotient(flowOf(withFilter.runs, applied), flowOf(without.runs, applied));
  if (!Number.isFinite(ratio.value)) return null;
  const { low, high } = rangeOf(ratio, limits.coverage);
  return { share: shareOf(ratio.value), range: { low: shareOf(high), high: shareOf(low) } };
}

/** A ratio below 0 or above 1 is an error of the reading: no filter pushes. */
const shareOf = (ratio: number) => 1 - Math.min(1, Math.max(0, ratio)) ** 2;

/**
 * Where the water is held back. Only a good flow without the filter proves the filter; a weak one points past it, to
 * the house supply or to the inlet valve and its line.
 *
 * @param found the filter's share, the flow without the filter, and the house supply; null where nobody measured
 * @param muchShare the share of pressure from which a filter is clogged, 0 to 1
 */
export function pointOf(
  { share, without, supply }: { share: { range: Band } | null; without: Verdict; supply: string | null },
  muchShare: number,
): SlowPoint {
  if (without === "passes" && share && share.range.low >= muchShare) return "filter";
  if (without !== "fails") return "unclear";
  if (supply === "fails") return "supply";
  return supply === "passes" || supply === "too-strong" ? "valve" : "supply-or-valve";
}
