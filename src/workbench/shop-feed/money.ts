import { minorDigits } from "../../catalogue/index.ts";

/** The sign between whole and decimals. */
export type Decimal = "comma" | "dot";

/** A price as the feed's reader takes it, or why it is none. */
export type Money = { price: string; currency: string } | { fault: string };

/** Signs that mean one currency, or that several countries use. */
const signs: Record<string, readonly string[]> = {
  "€": ["EUR"],
  "£": ["GBP"],
  "₹": ["INR"],
  zł: ["PLN"],
  Kč: ["CZK"],
  US$: ["USD"],
  $: ["USD", "CAD", "AUD", "NZD", "SGD", "HKD", "MXN"],
  "¥": ["JPY", "CNY"],
  kr: ["SEK", "NOK", "DKK", "ISK"],
};

const sign = "US\\$|[€£₹$¥]|zł|Kč|kr\\.?|[A-Za-z]{3}";
const form = new RegExp(`^(${sign})?\\s*(\\d[\\d.,'’\\s]*?)(?:[.,][-–—]+)?\\s*(${sign})?\\*?$`, "u");

/** Takes a cell apart into its number and its sign of a currency; null where it is no price. */
function partsOf(written: string): { number: string; sign: string } | null {
  const [, before = "", number, after = ""] = form.exec(written.trim()) ?? [];
  if (number === undefined || (before && after && before !== after)) return null;
  return { number: number.replace(/[\s'’](?=\d{3}(?!\d))/g, ""), sign: before || after };
}

/**
 * Which decimal sign a column has: the one that stands where only a decimal sign can. Null where no cell tells, or where
 * some tell one and some the other.
 */
export function decimalOf(cells: readonly string[]): Decimal | null {
  let [comma, dot] = [0, 0];
  for (const cell of cells) {
    const number = partsOf(cell)?.number ?? "";
    const last = /([.,])(\d+)$/.exec(number);
    const isMixed = number.includes(".") && number.includes(",");
    if (!last || (last[2]?.length === 3 && !isMixed)) continue;
    if (last[1] === ",") comma++;
    else dot++;
  }
  if (comma > 0 === dot > 0) return null;
  return comma > 0 ? "comma" : "dot";
}

/**
 * Reads a price with its sign or letters of a currency and marks between thousands: `12,90 €`, `1.299,00`, `$1,299.00`.
 * What may be read in two ways is refused.
 * @param decimal of the column, where it is known
 * @param currency of the row or the feed, empty where nobody says
 */
export function readMoney(written: string, decimal: Decimal | null, currency: string): Money {
  const read = partsOf(written);
  if (!read) return { fault: "The price is no number." };
  const said = currencyOf(read.sign, currency);
  if (said.startsWith("?")) return { fault: said.slice(1) };
  const number = plainNumber(read.number, decimal);
  if (number === null) return { fault: "The price may be read in two ways. Say decimal in the mapping." };
  const digits = minorDigits(said);
  const [whole = "", decimals = ""] = number.split(".");
  if (/[1-9]/.test(decimals.slice(digits))) return { fault: "The price has too many decimals." };
  const price = digits ? `${whole}.${decimals.slice(0, digits).padEnd(digits, "0")}` : whole;
  if (!/[1-9]/.test(price)) return { fault: "The price is nothing." };
  return { price, currency: said };
}

/** @returns three letters, or a question mark with what is wrong */
function currencyOf(written: string, given: string): string {
  if (written === "") return given || "?No currency is named. Say it with --currency.";
  const meant = signs[written.replace(/^kr\.$/, "kr")] ?? [written.toUpperCase()];
  const [only = ""] = meant;
  if (given === "")
    return meant.length === 1
      ? only
      : `?"${written}" is the sign of several currencies. Say which with --currency.`;
  return meant.includes(given) ? given : `?The price is not in ${given}.`;
}

/** The number with a dot and no marks between thousands, or null where it is unclear which is which. */
function plainNumber(number: string, decimal: Decimal | null): string | null {
  const marks = number.match(/[.,]/g) ?? [];
  const last = marks.at(-1);
  if (/[^\d.,]/.test(number)) return null;
  if (last === undefined) return number;
  const own = decimal === null ? null : decimal === "comma" ? "," : ".";
  const tail = number.slice(number.lastIndexOf(last) + 1);
  const isMixed = marks.some((mark) => mark !== last);
  const isGrouped = !isMixed && (marks.length > 1 || (tail.length === 3 && own !== null && own !== last));
  if (isGrouped) return /^\d{1,3}([.,]\d{3})+$/.test(number) ? number.replace(/[.,]/g, "") : null;
  if (!isMixed && tail.length === 3) return null;
  if (own !== null && own !== last) return null;
  const whole = number.slice(0, number.lastIndexOf(last));
  if (isMixed && !/^\d{1,3}([.,]\d{3})+$/.test(whole)) return null;
  if (isMixed && whole.includes(last)) return null;
  return `${whole.replace(/[.,]/g, "")}.${tail}`;
}
