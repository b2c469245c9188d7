import type { LimitOf, Statute } from "../../measuring/index.ts";

/** Everything that judges a supply; the numbers are in flows/limits.yaml, and which is the law in flows/regions/. */
export const supplyLimits = (of: LimitOf, statute?: Statute) => ({
  /** flow at a tap below which the house is weak, and from which it surely is not, l/min */
  leastPerMinute: of("supply-flow"),
  plentyPerMinute: of("supply-flow-plenty"),
  /** least good pressure at the appliance, and the most that household fittings take, kPa */
  leastKilopascals: of("supply-pressure-least"),
  mostKilopascals: of("supply-pressure-most"),
  /** pressure below which the law of a region has something to say, kPa; 0 where none has */
  statutoryKilopascals: statute ? of(statute.limit) : 0,
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
