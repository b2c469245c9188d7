import {
  type Band,
  type Estimate,
  estimateOf,
  guardBand,
  rangeOf,
  toGrams,
  type Verdict,
  verdictAgainst,
} from "../../measuring/index.ts";
import type { CubesLimits } from "./limits.ts";
import type { CubesReading } from "./reading.ts";

/** What a piece weighs, in g. */
export type CubesAssessment = {
  grams: Estimate;
  /** where the true weight lies, with the stated probability */
  range: Band;
  /** the share of a full piece, from 0; above 1 the tray was overfilled */
  fill: number;
  verdict: Verdict;
  /** the zone around the least good weight that is too close to call */
  band: Band;
};

/**
 * The mean weight of a piece and whether the tray was filled; lighter pieces fail. The scales err once for all of
 * them, so more pieces tell more. Expects a reading that {@link checkCubes} finds no fault with. Never throws.
 */
export function assessCubes({ pieces, mass, unit }: CubesReading, limits: CubesLimits): CubesAssessment {
  const { coverage, leastGrams: limit } = limits;
  const grams = estimateOf(toGrams(mass, unit) / pieces, { evenly: [limits.scaleReading / pieces] });
  return {
    grams,
    range: rangeOf(grams, coverage),
    fill: grams.value / limits.nominalGrams,
    verdict: verdictAgainst(grams, { limit, better: "above", coverage }),
    band: guardBand(grams, limit, coverage),
  };
}
