import { checkRange, fromKilopascals, fromMillilitres, type RangeProblem } from "../../measuring/index.ts";
import type { SupplyLimits } from "./limits.ts";
import type { SupplyReading } from "./reading.ts";

/** A problem with one of the numbers, in the unit in which it was typed. */
export type SupplyProblem = RangeProblem & { field: "volume" | "seconds" | "pressure" };

/** The first thing that cannot be right about a supply, or null. No water at all is a result, not a problem. */
export function checkSupply(reading: SupplyReading, limits: SupplyLimits): SupplyProblem | null {
  if (reading.by === "gauge") {
    const most = fromKilopascals(limits.highestKilopascals, reading.unit);
    const pressure = checkRange(reading.value, { min: 0, max: most });
    return pressure && { ...pressure, field: "pressure" };
  }
  const most = fromMillilitres(limits.largestMillilitres, reading.unit);
  const volume = checkRange(reading.volume, { min: 0, max: most });
  if (volume) return { ...volume, field: "volume" };
  const seconds = checkRange(reading.seconds, { min: limits.shortestSeconds, max: limits.longestSeconds });
  return seconds && { ...seconds, field: "seconds" };
}
