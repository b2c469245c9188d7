/*
 * Making a format takes a slow phone longer than a whole turn's texts; one of each kind serves a language for good.
 */
const lists = new Map<string, Intl.ListFormat>();
const numbers = new Map<string, Intl.NumberFormat>();
const months = new Map<string, string[]>();

/** Writes a list as the language does: 'a, b and c', or 'a, b or c' for a `disjunction`; empty for an empty list. */
export function showList(
  language: string,
  items: readonly string[],
  type: "conjunction" | "disjunction" = "conjunction",
): string {
  const kind = `${language} ${type}`;
  const format = lists.get(kind) ?? new Intl.ListFormat(language, { type });
  lists.set(kind, format);
  return format.format(items);
}

/** The twelve months by name, January first. */
export function monthNames(language: string): string[] {
  const known = months.get(language);
  if (known) return known;
  const { format } = new Intl.DateTimeFormat(language, { month: "long", timeZone: "UTC" });
  const names = Array.from({ length: 12 }, (_, month) => format(Date.UTC(2024, month)));
  months.set(language, names);
  return names;
}

/**
 * Writes numbers as the language does, with a true minus sign and at most so many decimals. Thousands stay together:
 * what is shown can be typed as it stands, and '1,500' could not.
 */
export function createNumbers(language: string): (value: number, digits: number) => string {
  return (value, digits) => {
    // −0.4 without decimals is a plain 0, not −0.
    const shown = Math.abs(value) < 0.5 / 10 ** digits ? 0 : value;
    return numbersOf(language, digits).format(shown).replace("-", "\u2212");
  };
}

function numbersOf(language: string, digits: number): Intl.NumberFormat {
  const kind = `${language} ${digits}`;
  const format =
    numbers.get(kind) ??
    new Intl.NumberFormat(language, { maximumFractionDigits: digits, useGrouping: false });
  numbers.set(kind, format);
  return format;
}
