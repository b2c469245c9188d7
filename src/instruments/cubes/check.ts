import { checkRange, fromGrams, type RangeProblem } from "../../measuring/index.ts";
import type { CubesLimits } from "./limits.ts";
import type { CubesReading } from "./reading.ts";

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
