import {
  type Band,
  type Estimate,
  estimateOf,
  guardBand,
  rangeOf,
  type Verdict,
  verdictAgainst,
} from "./estimate.ts";
import { checkRange, type RangeProblem } from "./number.ts";
import { fromGrams, type MassUnit, toGrams } from "./units.ts";

/** A few pieces of ice, counted and weighed together. */
export type CubesReading = { kind: "cubes"; pieces: number; mass: number; unit: MassUnit };

/** Everything that judges the weight of a piece; the numbers live with the flow data. All are above zero. */
export type CubesLimits = {
  /** probability with which the true weight lies in the stated range, 0 to 1 */
  coverage: number;
  /** reading kitchen scales, ± g, rectangular */
  scaleReading: number;
  /** a piece from a full tray, and the least that is still a good piece, g */
  nominalGrams: number;
  leastGrams: number;
  /** range of a believable count; no more than so many full pieces can weigh is believed of the mass */
  fewestPieces: number;
  mostPieces: number;
};

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

/** The first thing that cannot be right about a weighing, or null, in the unit in which it was typed. Never throws. */
export function checkCubes(
  { pieces, mass, unit }: CubesReading,
  limits: CubesLimits,
): (RangeProblem & { field: "pieces" | "mass" }) | null {
  const count = checkRange(pieces, { min: limits.fewestPieces, max: limits.mostPieces });
  if (count) return { ...count, field: "pieces" };
  const weight = checkRange(mass, {
    // Less than the scales can tell is no ice at all.
    min: fromGrams(limits.scaleReading, unit),
    max: fromGrams(limits.mostPieces * limits.nominalGrams, unit),
  });
  return weight && { ...weight, field: "mass" };
}

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
