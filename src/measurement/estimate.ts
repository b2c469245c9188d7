/** A measured quantity with its standard uncertainty `u` (JCGM 100:2008), both in the same unit; u ≥ 0. */
export type Estimate = { value: number; u: number };

/** Too close to the limit to call is an outcome of its own: measure again, longer or better. */
export type Verdict = "passes" | "fails" | "unclear";

/** The zone around a limit in which a value is too close to call, ends included. */
export type Band = { low: number; high: number };

/** Standard uncertainty of an error that lies anywhere within ± `halfWidth`: a/√3, JCGM 100 4.3.7. */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/**
 * One estimate divided by another, independent one: JCGM 100 5.1.6, [u(Q)/Q]² = [u(V)/V]² + [u(t)/t]².
 * Multiplied out, because nothing at all may have come out, and V = 0 has no relative uncertainty.
 */
export function quotient(top: Estimate, bottom: Estimate): Estimate {
  const value = top.value / bottom.value;
  return { value, u: Math.hypot(top.u, value * bottom.u) / Math.abs(bottom.value) };
}

/**
 * The best of two independent estimates of the same quantity: the weighted mean with the smallest
 * uncertainty, which by JCGM 100 5.1.2 has weights 1/u². It is never less certain than the better of the two.
 */
export function combine(a: Estimate, b: Estimate): Estimate {
  const weight = b.u ** 2 / (a.u ** 2 + b.u ** 2);
  return { value: b.value + weight * (a.value - b.value), u: (a.u * b.u) / Math.hypot(a.u, b.u) };
}

/** The band of `guard` standard uncertainties on both sides of a limit (JCGM 106:2012). */
export function guardBand(u: number, limit: number, guard: number): Band {
  return { low: limit - guard * u, high: limit + guard * u };
}

/**
 * Compares an estimate with a limit: outside the guard band it passes or fails, within it nobody can say.
 * An estimate that is not a number is unclear.
 *
 * @param better the side of the limit on which a reading is good
 * @param guard standard uncertainties on each side; 1.645 wrongly passes fewer than 5 % (ILAC-G8:09/2019)
 */
export function verdictAgainst(
  { value, u }: Estimate,
  { limit, better, guard }: { limit: number; better: "above" | "below"; guard: number },
): Verdict {
  const { low, high } = guardBand(u, limit, guard);
  if (value > high) return better === "above" ? "passes" : "fails";
  if (value < low) return better === "below" ? "passes" : "fails";
  return "unclear";
}
