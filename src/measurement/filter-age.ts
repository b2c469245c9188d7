import {
  addMonths,
  type DateProblem,
  findDateProblem,
  firstDayOf,
  lastDayOf,
  monthOf,
  monthsBetween,
} from "./calendar.ts";
import type { Verdict } from "./estimate.ts";

export type Season = "spring" | "summer" | "autumn" | "winter";

/**
 * When the water filter was fitted, as well as the householder knows it. 'since-moving' means that nobody
 * changed it since they moved in during `month`: it is at least that old. Dates are 'YYYY-MM-DD' and 'YYYY-MM'.
 * A season counts as northern unless told otherwise.
 */
export type FittedWhen =
  | { by: "date"; date: string }
  | { by: "month"; month: string }
  | { by: "season"; season: Season; year: number; hemisphere?: "north" | "south" | undefined }
  | { by: "since-moving"; month: string };

/**
 * What draws on the filter: how many people, and what they take, only ice, some glasses of water as well, or all that
 * they drink. `capacity` is what is printed on the cartridge, in litres.
 */
export type FilterUse = {
  people: number;
  habit: "ice" | "glasses" | "all";
  capacity?: number | undefined;
};

export type FilterAgeReading = { kind: "filter-age"; fitted: FittedWhen; use?: FilterUse | undefined };

/** Ages in months and due dates 'YYYY-MM-DD'; null where the answer sets no bound. */
export type FilterAgeAssessment = {
  months: { low: number; high: number | null };
  verdict: Verdict;
  dueOn: { earliest: string | null; latest: string | null };
};

/** First month of each northern meteorological season; the southern one is half a year later. */
const seasonStart: Record<Season, number> = { spring: 3, summer: 6, autumn: 9, winter: 12 };

/** A season that runs over New Year belongs to the year of its December: winter 2024 ends in February 2025. */
function firstMonthOf({ season, year, hemisphere }: FittedWhen & { by: "season" }): string {
  const month = seasonStart[season] + (hemisphere === "south" ? 6 : 0);
  return monthOf(year, month > 12 ? month - 12 : month);
}

/** The days that an answer stands for, both ends included; null is 'some time before'. */
function daysMeant(when: FittedWhen): [first: string | null, last: string] {
  if (when.by === "date") return [when.date, when.date];
  if (when.by === "since-moving") return [null, lastDayOf(when.month)];
  if (when.by === "month") return [firstDayOf(when.month), lastDayOf(when.month)];
  const first = firstDayOf(firstMonthOf(when));
  return [first, lastDayOf(addMonths(first, 2).slice(0, 7))];
}

/**
 * The days on which the filter may have been fitted, both ends included, none after `today`; `first` null is 'some
 * time before'. Null for an answer that {@link checkFittedWhen} refuses.
 */
export function fittedBetween(
  when: FittedWhen,
  today: string,
): { first: string | null; last: string } | null {
  if (checkFittedWhen(when, today, { earliest: "" })) return null;
  const [first, last] = daysMeant(when);
  return { first, last: last < today ? last : today };
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

/**
 * The age of a water filter as an interval, and whether it is due. It passes when it is younger than the
 * limit on every day on which it may have been fitted, fails when it is due on all of them (on the due day
 * itself it is due), and is unclear otherwise. Days after today are left out. An answer that
 * {@link checkFittedWhen} refuses tells nothing: no bounds, 'unclear'. Never throws.
 *
 * @param limitMonths life of a filter, whole months
 */
export function assessFilterAge(
  { fitted }: FilterAgeReading,
  today: string,
  limitMonths: number,
): FilterAgeAssessment {
  const days = fittedBetween(fitted, today);
  if (!days)
    return { months: { low: 0, high: null }, verdict: "unclear", dueOn: { earliest: null, latest: null } };
  const { first, last } = days;
  const earliest = first && addMonths(first, limitMonths);
  const latest = addMonths(last, limitMonths);
  return {
    months: { low: monthsBetween(last, today), high: first === null ? null : monthsBetween(first, today) },
    verdict: today >= latest ? "fails" : earliest && today < earliest ? "passes" : "unclear",
    dueOn: { earliest, latest },
  };
}
