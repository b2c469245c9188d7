import { expandFitment } from "./expand.ts";
import type { CollectedModel } from "./models.ts";
import type { FeedProblem, Place } from "./problem.ts";

/** A row whose model column means several models. */
export type PatternRow = Place & { pattern: string; brand: string; part: number; condition: number };

/**
 * Finds what the patterns of a feed mean among the models that it names by their full code; a row with a brand means
 * that brand's models only.
 * @returns how many rows meant something
 */
export function expandPatterns(
  rows: readonly PatternRow[],
  models: readonly CollectedModel[],
  enter: (model: number, row: PatternRow) => void,
  tell: (problem: FeedProblem) => void,
): number {
  if (rows.length === 0) return 0;
  const sorted = models
    .map(({ code, key, brand }, index) => ({ code, key, brand, index }))
    .sort((a, b) => (a.key < b.key ? -1 : Number(a.key > b.key)));
  const byBrand = new Map([["", sorted]]);
  const alike = new Map<string, PatternRow[]>();
  for (const row of rows) {
    const key = `${row.brand}\0${row.pattern}`;
    const others = alike.get(key);
    if (others) others.push(row);
    else alike.set(key, [row]);
  }
  let used = 0;
  for (const same of alike.values()) {
    const { pattern, brand } = same[0] ?? { pattern: "", brand: "" };
    const among = byBrand.get(brand) ?? sorted.filter((model) => model.brand === brand);
    byBrand.set(brand, among);
    const found = expandFitment(pattern, among);
    for (const row of same) {
      if ("code" in found) {
        tell({
          code: found.code,
          line: row.line,
          column: row.column,
          found: pattern,
          message: found.message,
        });
      } else {
        used++;
        for (const { index } of found) enter(index, row);
      }
    }
  }
  return used;
}
