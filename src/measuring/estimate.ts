import { halfWidthOf } from "./coverage.ts";

/**
 * A measured quantity with its standard uncertainty `u` (JCGM 100:2008), both in the same unit; u ≥ 0. `evenly` has
 * the half-widths of the errors within `u` that lie anywhere in a range alike; all others count as normal.
 */
export type Estimate = { value: number; u: number; evenly?: readonly number[] };

/** Too close to the limit to call is an outcome of its own: measure again, longer or better. */
export type Verdict = "passes" | "fails" | "unclear";

/** The zone around a limit in which a value is too close to call, ends included; or the range of a reading. */
export type Band = { low: number; high: number };

/** Standard uncertainty of an error that lies anywhere within ± `halfWidth`: a/√3, JCGM 100 4.3.7. */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/**
 * An estimate from its independent errors, all in the unit of `value`.
 * @param evenly half-widths of errors that lie anywhere in ± so much
 * @param normal standard uncertainties of all others
 */
export function estimateOf(
  value: number,
  { evenly = [], normal = [] }: { evenly?: readonly number[]; normal?: readonly number[] },
): Estimate {
  return { value, u: Math.hypot(...evenly.map(rectangular), ...normal), evenly };
}

const scaled = (evenly: readonly number[] = [], by: number) => evenly.map((width) => Math.abs(width * by));

/**
 * One estimate divided by another, independent one: JCGM 100 5.1.6, [u(Q)/Q]² = [u(V)/V]² + [u(t)/t]².
 * Multiplied out, because nothing at all may have come out, and V = 0 has no relative uncertainty.
 */
export function quotient(top: Estimate, bottom: Estimate): Estimate {
  const value = top.value / bottom.value;
  return {
    value,
    u: Math.hypot(top.u, value * bottom.u) / Math.abs(bottom.value),
    evenly: [...scaled(top.evenly, 1 / bottom.value), ...scaled(bottom.evenly, value / bottom.value)],
  };
}

/**
 * The best of two independent estimates of the same quantity: the weighted mean with the smallest
 * uncertainty, which by JCGM 100 5.1.2 has weights 1/u². It is never less certain than the better of the two.
 */
export function combine(a: Estimate, b: Estimate): Estimate {
  const weight = b.u ** 2 / (a.u ** 2 + b.u ** 2);
  return {
    value: b.value + weight * (a.value - b.value),
    u: (a.u * b.u) / Math.hypot(a.u, b.u),
    evenly: [...scaled(a.evenly, weight), ...scaled(b.evenly, 1 - weight)],
  };
}

/**
 * The range that holds the true value with the probability `coverage` (0 to 1, both ends alike): JCGM 101:2008 7.7.
 * With 0.95 each end is overstepped in 2.5 %.
 */
export function rangeOf(estimate: Estimate, coverage: number): Band {
  const half = halfWidthOf(estimate, coverage);
  return { low: estimate.value - half, high: estimate.value + half };
}

/** The band on both sides of a limit in which an estimate of such a shape is too close to call (JCGM 106:2012). */
export function guardBand(estimate: Estimate, limit: number, coverage: number): Band {
  return rangeOf({ ...estimate, value: limit }, coverage);
}

/**
 * Which side of a guard band a value lies on: within it, ends included, nobody can say, nor if it is not a number.
 * @param better the side on which a reading is good
 */
export function verdictOutside(value: number, { low, high }: Band, better: "above" | "below"): Verdict {
  if (value > high) return better === "above" ? "passes" : "fails";
  if (value < low) return better === "below" ? "passes" : "fails";
  return "unclear";
}

/**
 * Compares an estimate, whose errors are the same whatever its value, with a limit: outside the guard band it passes
 * or fails, within it nobody can say.
 *
 * @param coverage with 0.95, fewer than 2.5 % are wrongly passed and fewer than 2.5 % wrongly failed
 *   (ILAC-G8:09/2019: a guard band as wide as the expanded uncertainty)
 */
export function verdictAgainst(
  estimate: Estimate,
  { limit, better, coverage }: { limit: number; better: "above" | "below"; coverage: number },
): Verdict {
  return verdictOutside(estimate.value, guardBand(estimate, limit, coverage), better);
}
