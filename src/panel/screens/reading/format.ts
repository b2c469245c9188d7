import type { RangeProblem } from "../../../measuring/index.ts";
import { createNumbers, showList as listIn, minorDigits, type Texts } from "../../../turn/index.ts";

/** The reader's language as a BCP 47 tag. */
export const localeOf = (texts: Texts) => texts("ui.locale");

/** A number in the reader's writing, with a true minus sign and at most so many decimals. */
export function showNumber(texts: Texts, value: number, decimals = 1): string {
  return createNumbers(localeOf(texts))(value, decimals);
}

/** A list such as 'a, b and c'; empty for an empty list. */
export function showList(texts: Texts, items: readonly string[]): string {
  return listIn(localeOf(texts), items);
}

/** A calendar day 'YYYY-MM-DD' in words; noon keeps it the same day in every time zone. */
export function showDay(texts: Texts, day: string): string {
  return new Intl.DateTimeFormat(localeOf(texts), { dateStyle: "long" }).format(new Date(`${day}T12:00`));
}

/** A price in the smallest unit of its currency: 1999 and EUR are 19.99 euro, 500 and JPY are 500 yen. */
export function showPrice(texts: Texts, { minor, currency }: { minor: number; currency: string }): string {
  const format = new Intl.NumberFormat(localeOf(texts), { style: "currency", currency });
  return format.format(minor / 10 ** minorDigits(currency));
}

/** A length of time such as '10 s'. */
export function showSeconds(texts: Texts, seconds: number): string {
  return texts("measure.seconds", { seconds: showNumber(texts, seconds) });
}

/** A number that lies outside of its range, and the range, as a refusal names them. */
export function showRange(
  texts: Texts,
  { value, min, max }: RangeProblem,
): Record<"value" | "min" | "max", string> {
  return { value: showNumber(texts, value), min: showNumber(texts, min), max: showNumber(texts, max) };
}
