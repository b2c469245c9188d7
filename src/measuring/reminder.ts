import { addMonths, daysBetween } from "./calendar.ts";

/** One entry of a calendar, for a filter to change or a wait to end. All texts are in the reader's language. */
export type CalendarEntry = {
  /** the same for the same entry, so that a second file replaces the first; unlike all others */
  uid: string;
  /** when the file was made, RFC 3339 */
  stamp: string;
  /** a whole day 'YYYY-MM-DD', wherever the reader is, or an instant, RFC 3339 */
  starts: { day: string } | { instant: string };
  /** whole months until it comes again, 1 and above; once unless said */
  everyMonths?: number | undefined;
  title: string;
  notes: string;
  url?: string | undefined;
};

/**
 * The rule of RFC 5545 for every so many months from `date` ('YYYY-MM-DD') on, on the days that `addMonths` gives.
 *
 * A plain monthly rule leaves out the months that lack the day: half a year after 31 August there would come another
 * 31 August. The standard's own way, BYMONTHDAY=28,29,30,31;BYSETPOS=-1, makes some calendars show all four days
 * (those built on ical.js 2.2.1, for one), so it is the last resort: the 31st is the last of its month, and a 29th or
 * 30th that meets February is counted from the end of the year, from where leap years look the same.
 */
export function repeatRule(date: string, months: number): string {
  const rule = `FREQ=MONTHLY;INTERVAL=${months}`;
  const dayOf = (each: string) => Number(each.slice(8, 10));
  const day = dayOf(date);
  if (day === 31) return `${rule};BYMONTHDAY=-1`;
  const dates = Array.from({ length: 12 }, (_, times) => addMonths(date, months * (times + 1)));
  if (!dates.some((each) => dayOf(each) < day)) return rule;
  const inYear = 12 / months;
  if (!Number.isInteger(inYear))
    return `${rule};BYMONTHDAY=${[28, 29, 30].filter((each) => each <= day)};BYSETPOS=-1`;
  // January lies before the leap day: it is counted from the start.
  const yearDays = dates
    .slice(0, inYear)
    .map((each) =>
      each.slice(5, 7) === "01" ? dayOf(each) : daysBetween(`${each.slice(0, 4)}-12-31`, each) - 1,
    );
  return `FREQ=YEARLY;BYYEARDAY=${yearDays}`;
}

/** Cuts a line into pieces of at most 75 octets of UTF-8, never inside a character: RFC 5545 3.1. */
function folded(line: string): string {
  let text = "";
  let octets = 0;
  for (const character of line) {
    const code = character.codePointAt(0) ?? 0;
    const size = code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
    if (octets + size > 75) {
      text += "\r\n ";
      octets = 1;
    }
    text += character;
    octets += size;
  }
  return text;
}

/** RFC 5545 3.3.11: no control characters but the tab, and the others that mean something escaped. */
const escaped = (text: string) =>
  text
    .replace(/\r\n?/g, "\n")
    .replace(/(?![\n\t])\p{Cc}/gu, "")
    .replace(/[\\;,]/g, "\\$&")
    .replace(/\n/g, "\\n");

/** '20260831T063000Z'; an instant that cannot be read counts as the first of 1970. */
const inUtc = (instant: string) =>
  new Date(Date.parse(instant) || 0).toISOString().replace(/[-:]|\.\d+/g, "");

/**
 * A calendar file (RFC 5545, text/calendar) with one entry and an alarm: at nine in the morning of a day, or at the
 * instant. Lines end in CRLF. Never throws.
 */
export function calendarFile(entry: CalendarEntry): string {
  const { starts, everyMonths = 0, url } = entry;
  const whole = "day" in starts;
  const start = whole ? starts.day.replace(/\D/g, "") : inUtc(starts.instant);
  const date = `${start.slice(0, 4)}-${start.slice(4, 6)}-${start.slice(6, 8)}`;
  const title = escaped(entry.title);
  return [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Fridgeside//Reminders//EN",
    "BEGIN:VEVENT",
    `UID:${escaped(entry.uid)}`,
    `DTSTAMP:${inUtc(entry.stamp)}`,
    `DTSTART${whole ? ";VALUE=DATE" : ""}:${start}`,
    ...(everyMonths >= 1 ? [`RRULE:${repeatRule(date, everyMonths)}`] : []),
    `SUMMARY:${title}`,
    `DESCRIPTION:${escaped(entry.notes)}`,
    // An address has no space in it; a line break would begin a line of somebody else's.
    ...(url ? [`URL:${url.replace(/[\s\p{Cc}]/gu, "")}`] : []),
    "TRANSP:TRANSPARENT",
    "BEGIN:VALARM",
    "ACTION:DISPLAY",
    `TRIGGER:PT${whole ? "9H" : "0S"}`,
    `DESCRIPTION:${title}`,
    "END:VALARM",
    "END:VEVENT",
    "END:VCALENDAR",
    "",
  ]
    .map(folded)
    .join("\r\n");
}
