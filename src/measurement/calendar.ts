/*
 * Plain calendar dates as ISO 8601 text, 'YYYY-MM-DD' for a day and 'YYYY-MM' for a month, years 0000 to
 * 9999. No Date object: it knows a clock and a time zone, and a filter has neither. ISO text of one length
 * sorts by time, so dates compare with < and >. Except for the reading functions, dates are expected to be
 * real ones.
 */

/** The days between which an answer is believable, 'YYYY-MM-DD' both; `latest` is usually today. */
export type DateBounds = { earliest: string; latest: string };

/** Why a date cannot be right, with what the message needs. 'no-such-day' also covers a 13th month. */
export type DateProblem = DateBounds & {
  code: "unreadable" | "no-such-day" | "in-future" | "too-long-ago";
  typed: string;
};

const partsOf = (date: string) =>
  [Number(date.slice(0, 4)), Number(date.slice(5, 7)), Number(date.slice(8, 10))] as const;

const padded = (value: number, length: number) => `${value}`.padStart(length, "0");

/** A month as 'YYYY-MM'; month 1 to 12. */
export function monthOf(year: number, month: number): string {
  return `${padded(year, 4)}-${padded(month, 2)}`;
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** What is wrong with a day or a month, or null. Never throws. */
export function findDateProblem(
  typed: string,
  form: "day" | "month",
  bounds: DateBounds,
): DateProblem | null {
  const found = (code: DateProblem["code"]) => ({ code, typed, ...bounds });
  if (!(form === "day" ? /^\d{4}-\d\d-\d\d$/ : /^\d{4}-\d\d$/).test(typed)) return found("unreadable");
  const [year, month, day] = partsOf(form === "day" ? typed : firstDayOf(typed));
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return found("no-such-day");
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
  const [year, number] = partsOf(month);
  return `${month}-${daysInMonth(year, number)}`;
}

/**
 * The same day some whole months later, or earlier when negative. A day that the month lacks becomes its
 * last day (Temporal's "constrain"): `addMonths("2025-08-31", 6)` is '2026-02-28', so no reminder is skipped.
 */
export function addMonths(date: string, months: number): string {
  const [year, month, day] = partsOf(date);
  const index = year * 12 + month - 1 + months;
  const toYear = Math.floor(index / 12);
  const toMonth = index - toYear * 12 + 1;
  return `${monthOf(toYear, toMonth)}-${padded(Math.min(day, daysInMonth(toYear, toMonth)), 2)}`;
}

/** Days since 1 March of the year 0. Years start in March here, so that a leap day comes last. */
function dayNumber(date: string): number {
  const [year, month, day] = partsOf(date);
  const years = month > 2 ? year : year - 1;
  const leapDays = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  // March to July and August to December are 153 days each: five months of 31, 30, 31, 30, 31.
  const daysBefore = Math.floor((153 * ((month + 9) % 12) + 2) / 5);
  return years * 365 + leapDays + daysBefore + day - 1;
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
  const number = Math.min(lastDay, Math.max(firstDay, dayNumber(date) + days));
  // The way back from dayNumber: 400 years have 146 097 days, and 1 460, 36 524 and 146 096 are the last days of
  // four years, of a century and of the whole, which would else begin a year of their own.
  const era = Math.floor(number / 146_097);
  const inEra = number - era * 146_097;
  const leapDays = Math.floor(inEra / 1460) - Math.floor(inEra / 36_524) + Math.floor(inEra / 146_096);
  const year = Math.floor((inEra - leapDays) / 365);
  const inYear = inEra - (365 * year + Math.floor(year / 4) - Math.floor(year / 100));
  const fromMarch = Math.floor((5 * inYear + 2) / 153);
  const month = ((fromMarch + 2) % 12) + 1;
  const day = inYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  return `${monthOf(era * 400 + year + (month < 3 ? 1 : 0), month)}-${padded(day, 2)}`;
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
