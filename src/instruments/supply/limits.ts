import type { LimitOf } from "../../measuring/index.ts";

/** Everything that judges a supply; the numbers are in flows/limits.yaml. All are above zero. */
export const supplyLimits = (of: LimitOf) => ({
  /** least good flow at a tap, l/min */
  leastPerMinute: of("supply-flow"),
  /** least good pressure at the appliance, and the most that household fittings take, kPa */
  leastKilopascals: of("supply-pressure-least"),
  mostKilopascals: of("supply-pressure-most"),
  /** pressure that the water company owes, kPa */
  statutoryKilopascals: of("supply-pressure-statutory"),
  /** probability with which the true value lies in the stated range, 0 to 1 */
  coverage: of("coverage"),
  /** reading the vessel's marks, ± ml, rectangular */
  jugReading: of("jug-reading"),
  /** the vessel's marks being in the wrong place, ± fraction of the volume, rectangular */
  jugScale: of("jug-scale"),
  /** timing one fill by hand, standard uncertainty in s */
  timing: of("stopwatch"),
  /** what a household gauge is out by, ± kPa, rectangular */
  gaugeError: of("gauge-error"),
  /** range of a believable fill: s, and the most in ml */
  shortestSeconds: of("flow-shortest"),
  longestSeconds: of("fill-longest"),
  largestMillilitres: of("fill-most"),
  /** highest believable pressure, kPa */
  highestKilopascals: of("gauge-highest"),
});

export type SupplyLimits = ReturnType<typeof supplyLimits>;
