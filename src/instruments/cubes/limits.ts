import type { LimitOf } from "../../measuring/index.ts";

/** Everything that judges the weight of a piece; the numbers are in flows/limits.yaml. All are above zero. */
export const cubesLimits = (of: LimitOf) => ({
  /** probability with which the true weight lies in the stated range, 0 to 1 */
  coverage: of("coverage"),
  /** reading kitchen scales, ± g, rectangular */
  scaleReading: of("scale-reading"),
  /** a piece from a full tray, and the least that is still a good piece, g */
  nominalGrams: of("piece-nominal"),
  leastGrams: of("piece-small"),
  /** range of a believable count; no more than so many full pieces can weigh is believed of the mass */
  fewestPieces: of("weigh-least"),
  mostPieces: of("weigh-most"),
});

export type CubesLimits = ReturnType<typeof cubesLimits>;
