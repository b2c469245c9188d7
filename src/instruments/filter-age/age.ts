import { addMonths, firstDayOf, lastDayOf, monthsBetween, type Verdict } from "../../measuring/index.ts";
import { checkFittedWhen, firstMonthOf } from "./check.ts";
import type { FilterAgeReading, FittedWhen } from "./reading.ts";

/** Ages in months and due dates 'YYYY-MM-DD'; null where the answer sets no bound. */
export type FilterAgeAssessment = {
  months: { low: number; high: number | null };
  verdict: Verdict;
  dueOn: { earliest: string | null; latest: string | null };
};

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
