import { readNumber } from "../../measuring/index.ts";

/** Words by which measurements are read, as locales/<tag>/phrases/readings.yaml has them. */
export type ReadingWords = { numbers: string; units: string; words: string; months: string; seasons: string };

/** A sentence's numbers and the words that say what they are; all else is left out. */
export type Item =
  | { kind: "number"; value: number; typed: string }
  | { kind: "unit"; unit: string }
  | { kind: "word"; word: string }
  | { kind: "month"; month: number }
  | { kind: "season"; season: "spring" | "summer" | "autumn" | "winter" };

type Lookup = Map<string, Item>;

const seasons = ["spring", "summer", "autumn", "winter"] as const;

/** The words made ready. */
export function lookupOf({ numbers, units, words, months, seasons: named }: ReadingWords): Lookup {
  const lookup: Lookup = new Map();
  const each = (lines: string, make: (meant: string) => Item) => {
    for (const line of lines.split("\n")) {
      const [meant = "", names = ""] = line.split("=");
      for (const name of names.split(" ")) lookup.set(name, make(meant));
    }
  };
  each(words, (word) => ({ kind: "word", word }));
  each(units, (unit) => ({ kind: "unit", unit }));
  each(numbers, (meant) => ({ kind: "number", value: Number(meant), typed: meant }));
  for (const [at, names] of months.split(" ").entries())
    for (const name of names.split(/[=,]/)) if (name) lookup.set(name, { kind: "month", month: at + 1 });
  for (const [at, names] of named.split(" ").entries())
    for (const name of names.split(","))
      lookup.set(name, { kind: "season", season: seasons[at] ?? "spring" });
  return lookup;
}

// A number as a cup or a scale has it: '3 1/4', '1/2', '3½', '1.5'; a sign only where no word stands right before it.
const number = String.raw`(?:(?<![\p{L}\d])[-\u2212+])?(?:\d{1,3} +\d{1,2}/\d{1,2}|\d{1,2}/\d{1,2}(?!/?\d)|\d+[.,]\d+|\d+)[\u00bc-\u00be\u2150-\u215e]?|[\u00bc-\u00be]`;
const pieces = new RegExp(`${number}|[\\p{L}]+`, "giu");

/** What a sentence says of numbers, in its order. 'Minus' and 'below' make the number beside them negative. */
export function itemsOf(sentence: string, lookup: Lookup): Item[] {
  const text = sentence
    .toLowerCase()
    .replace(/fl\.? ?oz|fluid ounces?/g, "floz")
    .replace(/°/g, " ");
  const items: Item[] = [];
  for (const [typed] of text.matchAll(pieces)) {
    const before = items.at(-1);
    const known = lookup.get(typed);
    const read =
      known?.kind === "number" ? { kind: "value" as const, value: known.value } : readNumber(typed);
    if (read.kind === "value") {
      const isMinus = before?.kind === "word" && before.word === "minus";
      if (isMinus) items.pop();
      const value = isMinus ? -read.value : read.value;
      items.push({
        kind: "number",
        value,
        typed: `${isMinus ? "-" : ""}${known ? `${value}` : typed}`.replace("--", "-"),
      });
    } else if (known) items.push(known);
  }
  return items;
}
