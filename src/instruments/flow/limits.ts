import type { LimitOf } from "../../measuring/index.ts";

/** Everything that judges a flow; the numbers are in flows/limits.yaml. All are above zero. */
export const flowLimits = (of: LimitOf) => ({
  /** least good flow, ml/s */
  minimum: of("flow-minimum"),
  /** how long one run should be, s; flows are spoken of as what comes in that time */
  aimSeconds: of("flow-seconds"),
  /** probability with which the true flow lies in the stated range, 0 to 1 */
  coverage: of("coverage"),
  /**
   * How far apart two runs may lie, in standard uncertainties of their difference. For 5 % false alarms
   * about 2 with two runs and 2.3 with three (the range of two and of three normal values, over the root of 2).
   */
  agreement: of("run-agreement"),
  /** reading a jug's marks, ± ml, rectangular */
  jugReading: of("jug-reading"),
  /** a jug's marks being in the wrong place, ± fraction of the volume, rectangular */
  jugScale: of("jug-scale"),
  /** reading kitchen scales, ± g, rectangular */
  scaleReading: of("scale-reading"),
  /** timing one run by hand, standard uncertainty in s */
  timing: of("stopwatch"),
  /** range of a believable run, s */
  shortestSeconds: of("flow-shortest"),
  longestSeconds: of("flow-longest"),
  /** most water that a believable run gives, ml */
  largestMillilitres: of("flow-most"),
});

export type FlowLimits = ReturnType<typeof flowLimits>;
