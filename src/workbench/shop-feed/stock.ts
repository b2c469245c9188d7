import { plainHeading } from "./headings.ts";
import { allWords } from "./words/index.ts";

export type Stock = "in-stock" | "few" | "out-of-stock";

const known = new Map<string, Stock>();
for (const { stock } of allWords)
  for (const [state, words] of Object.entries(stock))
    for (const word of words) known.set(plainHeading(word), state as Stock);

/**
 * What a cell says of stock, as the feed's reader takes it: a state, or a count. schema.org's addresses count as their
 * last word.
 * @param own the shop's words
 * @returns null where it is unknown
 */
export function readStock(written: string, own: Readonly<Record<string, Stock>> = {}): string | null {
  const cell = written.trim();
  if (cell === "") return "";
  const said = [cell, cell.toLowerCase()].find((word) => Object.hasOwn(own, word));
  if (said !== undefined) return own[said] ?? null;
  const count = /^[>~]?\s*(-?\d{1,9})([.,]0+)?\s*\+?(\s*(pcs?|pieces?|units?|stk|stück|st|x)\.?)?$/iu.exec(
    cell,
  )?.[1];
  if (count !== undefined) return count;
  return known.get(plainHeading(cell.replace(/^https?:.*\//, ""))) ?? null;
}
