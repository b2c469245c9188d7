/*
 * Plain calendar dates as ISO 8601 text, 'YYYY-MM-DD' for a day and 'YYYY-MM' for a month, years 0000 to 9999: a filter
 * knows no clock and no time zone. ISO text of one length sorts by time, so dates compare with < and >. Days are counted
 * by the platform in UTC, where every day has 24 hours. Except for the checking function, dates are expected to be real.
 */

/** The days between which an answer is believable, 'YYYY-MM-DD' both; `latest` is usually today. */
export type DateBounds = { earliest: string; latest: string };

/** Why a date cannot be right, with what the message needs. 'no-such-day' also covers a 13th month. */
export type DateProblem = DateBounds & {
  code: "unreadable" | "no-such-day" | "in-future" | "too-long-ago";
  typed: string;
};

const dayMs = 86_400_000;
/** ECMAScript reads a day alone as its midnight in UTC, and ISO text gives it back. */
const dayNumber = (date: string) => Date.parse(date) / dayMs;
const dateOf = (number: number) => new Date(number * dayMs).toISOString().slice(0, 10);

const partsOf = (date: string) => [Number(date.slice(0, 4)), Number(date.slice(5, 7))] as const;

/** A month as 'YYYY-MM'; month 1 to 12. */
export function monthOf(year: number, month: number): string {
  return `${`${year}`.padStart(4, "0")}-${`${month}`.padStart(2, "0")}`;
}

/**
 * A year of which two digits were typed: the latest that has them and has begun. `fullYear("25", "2026-01-31")` is
 * '2025', and '99' is 1999. Anything but two digits stays as it is.
 */
export function fullYear(typed: string, today: string): string {
  if (!/^\d\d$/.test(typed)) return typed;
  const year = Number(today.slice(0, 4));
  const latest = year - (year % 100) + Number(typed);
  return `${latest > year ? latest - 100 : latest}`;
}

/** What is wrong with a day or a month, or null. Never throws; 31 February is refused and not moved to March. */
export function findDateProblem(
  typed: string,
  form: "day" | "month",
  bounds: DateBounds,
): DateProblem | null {
  const found = (code: DateProblem["code"]) => ({ code, typed, ...bounds });
  if (!(form === "day" ? /^\d{4}-\d\d-\d\d$/ : /^\d{4}-\d\d$/).test(typed)) return found("unreadable");
  const day = form === "day" ? typed : firstDayOf(typed);
  // Some browsers take 31 February for 3 March, others for no date at all.
  if (Number.isNaN(dayNumber(day)) || dateOf(dayNumber(day)) !== day) return found("no-such-day");
  // A month is believable when any of its days is.
  if (typed > bounds.latest.slice(0, typed.length)) return found("in-future");
  if (typed < bounds.earliest.slice(0, typed.length)) return found("too-long-ago");
  return null;
}

/** The first day of 'YYYY-MM'. */
export function firstDayOf(month: string): string {
  return `${month}-01`;
}

/** The last day of 'YYYY-MM'. */
export function lastDayOf(month: string): string {
  // Day 0 of the month after; a leap year comes every 400 years the same, and Date.UTC takes years below 100 for 1900s.
  const [year, number] = partsOf(month);
  return `${month}-${new Date(Date.UTC(2000 + (year % 400), number, 0)).getUTCDate()}`;
}

/**
 * The same day some whole months later, or earlier when negative. A day that the month lacks becomes its
 * last day (Temporal's "constrain"): `addMonths("2025-08-31", 6)` is '2026-02-28', so no reminder is skipped.
 */
export function addMonths(date: string, months: number): string {
  const [year, month] = partsOf(date);
  const index = year * 12 + month - 1 + months;
  const to = monthOf(Math.floor(index / 12), (((index % 12) + 12) % 12) + 1);
  const last = lastDayOf(to);
  return date.slice(8) < last.slice(8) ? to + date.slice(7) : last;
}

/** Days from `a` to `b`; negative when `b` comes first. */
export function daysBetween(a: string, b: string): number {
  return dayNumber(b) - dayNumber(a);
}

const [firstDay, lastDay] = [dayNumber("0000-01-01"), dayNumber("9999-12-31")];

/**
 * The day some whole days later, or earlier when negative; what lies before the year 0000 or after 9999 becomes the
 * first or the last day that can be written. `addDays("2024-02-28", 2)` is '2024-03-01'.
 */
export function addDays(date: string, days: number): string {
  return dateOf(Math.min(lastDay, Math.max(firstDay, dayNumber(date) + days)));
}

/**
 * Whole months from `a` to `b`: the largest n for which `addMonths(a, n)` is not after `b`. So 31 January
 * to 28 February is one, and a filter is n months old on the very day on which it becomes due.
 */
export function wholeMonthsBetween(a: string, b: string): number {
  const [fromYear, fromMonth] = partsOf(a);
  const [toYear, toMonth] = partsOf(b);
  const months = (toYear - fromYear) * 12 + toMonth - fromMonth;
  return addMonths(a, months) > b ? months - 1 : months;
}

/** Months from `a` to `b` with the days as a fraction of the month that has begun; whole where the above is. */
export function monthsBetween(a: string, b: string): number {
  const whole = wholeMonthsBetween(a, b);
  const start = addMonths(a, whole);
  return whole + daysBetween(start, b) / daysBetween(start, addMonths(a, whole + 1));
}
