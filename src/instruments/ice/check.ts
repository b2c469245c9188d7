import { checkRange, fromGrams, type RangeProblem } from "../../measuring/index.ts";
import type { IceLimits } from "./limits.ts";
import type { IceReading } from "./reading.ts";

/** The first thing that cannot be right about a yield, or null. No ice at all is a result, not a problem. */
export function checkIce(
  { by, amount, unit = "g", hours, pieceGrams }: IceReading,
  limits: IceLimits,
): (RangeProblem & { field: "amount" | "hours" | "pieceGrams" }) | null {
  const grams = limits.mostKilograms * 1000;
  const most = {
    pieces: grams / limits.pieceGrams.low,
    weight: fromGrams(grams, unit),
    batches: grams / limits.batchGrams.low,
  };
  const ice = checkRange(amount, { min: 0, max: most[by] });
  if (ice) return { ...ice, field: "amount" };
  const time = checkRange(hours, { min: limits.shortestHours, max: limits.longestHours });
  if (time) return { ...time, field: "hours" };
  if (by !== "pieces" || pieceGrams === undefined) return null;
  // Scales tell nothing lighter, and no piece weighs more than all of its batch.
  const piece = checkRange(pieceGrams, { min: limits.scaleReading, max: limits.batchGrams.high });
  return piece && { ...piece, field: "pieceGrams" };
}
