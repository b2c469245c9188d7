import { expandFitment, mostExpanded } from "./expand.ts";
import { type FeedLimits, feedLimits, tooMuch } from "./limits.ts";
import type { CollectedModel } from "./models.ts";
import type { FeedProblem, Place } from "./problem.ts";

/** A row whose model column means several models. */
export type PatternRow = Place & { pattern: string; brand: string; part: number; condition: number };

/**
 * Finds what the patterns of a feed mean among the models that it names by their full code; a row with a brand means
 * that brand's models only.
 * @returns how many rows meant something
 * @throws UnusableFeed where all of them together mean too much, or take too long to find
 */
export function expandPatterns(
  rows: readonly PatternRow[],
  models: readonly CollectedModel[],
  enter: (model: number, row: PatternRow) => void,
  tell: (problem: FeedProblem) => void,
  limits: FeedLimits = feedLimits,
): number {
  if (rows.length === 0) return 0;
  const sorted = models
    .map(({ code, key, brand }, index) => ({ code, key, brand, index }))
    .sort((a, b) => (a.key < b.key ? -1 : Number(a.key > b.key)));
  const byBrand = new Map<string, typeof sorted>();
  for (const model of sorted) {
    const others = byBrand.get(model.brand);
    if (others) others.push(model);
    else byBrand.set(model.brand, [model]);
  }
  const alike = new Map<string, PatternRow[]>();
  for (const row of rows) {
    const key = `${row.brand}\0${row.pattern}`;
    const others = alike.get(key);
    if (others) others.push(row);
    else alike.set(key, [row]);
  }
  let used = 0;
  let entered = 0;
  let looks = 0;
  for (const same of alike.values()) {
    const { pattern, brand } = same[0] ?? { pattern: "", brand: "" };
    const among = brand === "" ? sorted : (byBrand.get(brand) ?? []);
    const found = expandFitment(pattern, among, mostExpanded, () => {
      if (++looks > limits.looks)
        throw tooMuch(
          "To find what the patterns of this feed mean takes",
          limits.looks,
          "looks at a model",
          whichOne(same[0]),
        );
    });
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
        entered += found.length;
        if (entered > limits.expanded)
          throw tooMuch("The patterns of this feed mean", limits.expanded, "fitments", whichOne(row));
        for (const { index } of found) enter(index, row);
      }
    }
  }
  return used;
}

function whichOne(row: PatternRow | undefined): string {
  return `. The one that goes past it is "${row?.pattern}" in line ${row?.line}. Write narrower patterns, or the models themselves`;
}
