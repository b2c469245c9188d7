import type { HelpHours } from "./help-hours.ts";

/** What hours are put together of in a language: `asides.open-hours.parts`. */
export type HourParts = Record<string, string>;

type Span = [from: number, to: number];

const day = 1440;

/**
 * Opening hours as one says them: 'Monday to Friday from 09:00 to 17:30, and Saturday from 10:00 to 14:00'. Days and
 * times have the language's own form; days that are open alike are named together, in the order of the week.
 */
export function sayHours(hours: HelpHours, parts: HourParts, language: string): string {
  const alike = new Map<string, { days: number[]; spans: Span[] }>();
  for (let weekday = 0; weekday < 7; weekday++) {
    const spans = spansOn(weekday, hours);
    const known = alike.get(spans.join(" "));
    if (known) known.days.push(weekday);
    else if (spans[0]) alike.set(spans.join(" "), { days: [weekday], spans });
  }
  const groups = [...alike.values()].map(({ days, spans }) =>
    fill(parts["group"], {
      days: sayDays(days, parts, language),
      times: listOf(
        spans.map((span) => saySpan(span, parts, language)),
        language,
      ),
    }),
  );
  return groups.reduce((said, more, place) =>
    fill(parts[place === groups.length - 1 ? "last" : "earlier"], { said, more }),
  );
}

/** When a day is open, from the earliest on; what overlaps is one span. */
function spansOn(weekday: number, hours: HelpHours): Span[] {
  const all = hours.filter(({ days }) => days.includes(weekday)).sort((one, other) => one.from - other.from);
  const spans: Span[] = [];
  for (const { from, to } of all) {
    const last = spans.at(-1);
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else spans.push([from, to]);
  }
  return spans;
}

/** 'Monday to Friday', 'Saturday and Sunday', 'Monday, Wednesday and Friday', 'every day'. */
function sayDays(days: number[], parts: HourParts, language: string): string {
  if (days.length === 7) return parts["every-day"] ?? "";
  const format = new Intl.DateTimeFormat(language, { weekday: "long", timeZone: "UTC" });
  // The first of January 2024 was a Monday.
  const nameOf = (weekday: number) => format.format(Date.UTC(2024, 0, 1 + weekday));
  const runs = days.reduce<number[][]>((all, weekday) => {
    const last = all.at(-1);
    if (last?.at(-1) === weekday - 1) last.push(weekday);
    else all.push([weekday]);
    return all;
  }, []);
  const names = runs.flatMap((run) =>
    run.length < 3
      ? run.map(nameOf)
      : fill(parts["days"], { first: nameOf(run[0] ?? 0), last: nameOf(run.at(-1) ?? 0) }),
  );
  return listOf(names, language);
}

function saySpan([from, to]: Span, parts: HourParts, language: string): string {
  if (to - from >= day) return parts["all-day"] ?? "";
  const format = new Intl.DateTimeFormat(language, { hour: "numeric", minute: "2-digit", timeZone: "UTC" });
  const timeOf = (minutes: number) =>
    minutes % day ? format.format(Date.UTC(2024, 0, 1, 0, minutes)) : (parts["midnight"] ?? "");
  return fill(parts["span"], { from: timeOf(from), to: timeOf(to) });
}

const listOf = (items: string[], language: string) => new Intl.ListFormat(language).format(items);

/** A text with what stands for its placeholders. */
export const fill = (text = "", given: Record<string, string>) =>
  text.replace(/{{([\w-]+)}}/g, (whole, name: string) => given[name] ?? whole);
