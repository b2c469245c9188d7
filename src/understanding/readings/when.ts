import { addDays, addMonths, type DateOrder, fullYear } from "../../measuring/index.ts";
import { amountsOf } from "./amounts.ts";
import type { Item } from "./items.ts";

/** The months of a season that begins in its year, northern, by the number of its first. */
const beginsIn = { spring: 3, summer: 6, autumn: 9, winter: 12 };

type Entries = Record<string, string>;

/**
 * When something was, as the filter's form has it: a day, a month or a season. 'Last summer' is the latest that has
 * begun, and 'in May' the latest May. Null where nothing is said of it.
 * @param today 'YYYY-MM-DD'
 */
export function whenOf(
  sentence: string,
  items: readonly Item[],
  today: string,
  order: DateOrder,
): Entries | null {
  const moving = items.some((item) => item.kind === "word" && item.word === "moving");
  const said = writtenDate(sentence, today, order) ?? namedMonth(items, today) ?? ago(items, today);
  if (!said) return season(items, today);
  return moving && said["month"]
    ? { by: "since-moving", month: said["month"], year: said["year"] ?? "" }
    : said;
}

function writtenDate(sentence: string, today: string, order: DateOrder): Entries | null {
  const iso = /\b(\d{4})-(\d{1,2})(?:-(\d{1,2}))?\b/.exec(sentence);
  if (iso) return dateEntries(iso[1] ?? "", iso[2] ?? "", iso[3]);
  const [, a = "", b = "", c = ""] = /\b(\d{1,4})[/.](\d{1,2})[/.](\d{2,4})\b/.exec(sentence) ?? [];
  if (c) {
    const parts = Object.fromEntries(order.split(" ").map((part, at) => [part, [a, b, c][at] ?? ""]));
    return dateEntries(fullYear(parts["year"] ?? "", today), parts["month"] ?? "", parts["day"]);
  }
  const [, month = "", year = ""] = /\b(\d{1,2})[/.](\d{4})\b/.exec(sentence) ?? [];
  return year ? dateEntries(year, month) : null;
}

const dateEntries = (year: string, month: string, day?: string): Entries => ({
  by: day ? "date" : "month",
  ...(day && { day: `${Number(day)}` }),
  month: `${Number(month)}`,
  year,
});

function namedMonth(items: readonly Item[], today: string): Entries | null {
  const found = items.find((item) => item.kind === "month");
  if (!found) return null;
  const year = yearIn(items);
  const [thisYear, thisMonth] = [Number(today.slice(0, 4)), Number(today.slice(5, 7))];
  return dateEntries(year ?? `${found.month > thisMonth ? thisYear - 1 : thisYear}`, `${found.month}`);
}

function ago(items: readonly Item[], today: string): Entries | null {
  const says = (word: string) => items.some((item) => item.kind === "word" && item.word === word);
  if (says("yesterday") || says("today")) return dayEntries(says("today") ? today : addDays(today, -1));
  const unitAfterLast = items.findIndex((item, at) => item.kind === "unit" && isWord(items[at - 1], "last"));
  const { unit, value } =
    amountsOf(items).find((one) => one.unit && /^(day|week|month|year)$/.test(one.unit)) ??
    (unitAfterLast >= 0
      ? { unit: (items[unitAfterLast] as { unit: string }).unit, value: 1 }
      : { unit: null, value: 0 });
  if (unit === "day") return dayEntries(addDays(today, -Math.round(value)));
  if (unit === "week") return dayEntries(addDays(today, -Math.round(value * 7)));
  if (unit !== "month" && unit !== "year") return null;
  const date = addMonths(today, -Math.round(unit === "year" ? value * 12 : value));
  return dateEntries(date.slice(0, 4), date.slice(5, 7));
}

const dayEntries = (date: string) => dateEntries(date.slice(0, 4), date.slice(5, 7), date.slice(8));

function season(items: readonly Item[], today: string): Entries | null {
  const found = items.find((item) => item.kind === "season");
  if (!found) return null;
  const begun = Number(today.slice(5, 7)) >= beginsIn[found.season];
  const year = yearIn(items) ?? `${Number(today.slice(0, 4)) - (begun ? 0 : 1)}`;
  return { by: "season", season: found.season, year };
}

const isWord = (item: Item | undefined, word: string) => item?.kind === "word" && item.word === word;

function yearIn(items: readonly Item[]): string | null {
  const year = items.find((item) => item.kind === "number" && item.value >= 1990 && item.value < 2100);
  return year?.kind === "number" ? `${year.value}` : null;
}
