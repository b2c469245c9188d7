import {
  checkRange,
  type DateProblem,
  findDateProblem,
  monthOf,
  type RangeProblem,
} from "../../measuring/index.ts";
import type { FilterLifeLimits } from "./limits.ts";
import type { FilterUse, FittedWhen, Season } from "./reading.ts";

/** First month of each northern meteorological season; the southern one is half a year later. */
const seasonStart: Record<Season, number> = { spring: 3, summer: 6, autumn: 9, winter: 12 };

/** A season that runs over New Year belongs to the year of its December: winter 2024 ends in February 2025. */
export function firstMonthOf({ season, year, hemisphere }: FittedWhen & { by: "season" }): string {
  const month = seasonStart[season] + (hemisphere === "south" ? 6 : 0);
  return monthOf(year, month > 12 ? month - 12 : month);
}

/**
 * Whether an answer can be true today, or why not. A month or season that has begun is fine, one wholly in
 * the future is not; a season is judged, and given in the problem, by its first month. Never throws.
 *
 * @param limits `earliest` is the first believable day, 'YYYY-MM-DD'
 */
export function checkFittedWhen(
  when: FittedWhen,
  today: string,
  limits: { earliest: string },
): DateProblem | null {
  const bounds = { earliest: limits.earliest, latest: today };
  if (when.by === "date") return findDateProblem(when.date, "day", bounds);
  return findDateProblem(when.by === "season" ? firstMonthOf(when) : when.month, "month", bounds);
}

/** What cannot be right about the use of a filter, or null. Never throws. */
export function checkFilterUse(
  { people, capacity }: FilterUse,
  limits: FilterLifeLimits,
): (RangeProblem & { field: "people" | "capacity" }) | null {
  const many = checkRange(people, { min: 1, max: limits.people });
  if (many) return { ...many, field: "people" };
  const print =
    capacity === undefined
      ? null
      : checkRange(capacity, { min: limits.capacityLeast, max: limits.capacityMost });
  return print && { ...print, field: "capacity" };
}
