import {
  type CollectedFeed,
  type CollectOptions,
  createCollector,
} from "../../../src/workbench/feed/index.ts";

/** A good row, by heading. */
export const goodRow = {
  brand: "Wexmarrow",
  model: "WX-1B",
  machine: "french-door",
  kind: "ice-bin",
  number: "LLS-1",
  name: "Ice bin",
  price: "34.99",
  currency: "GBP",
};
export type FeedRow = Record<string, string>;

/** Rows as CSV; a column that any row has is in all of them. */
export function toCsv(rows: readonly FeedRow[]): string {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const quote = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return [names, ...rows.map((row) => names.map((name) => row[name] ?? ""))]
    .map((fields) => `${fields.map(quote).join(",")}\n`)
    .join("");
}

/** Collects a feed that is given as text. */
export function collectText(text: string, options: Partial<CollectOptions> = {}): CollectedFeed {
  const collector = createCollector({ few: 3, ...options });
  collector.push(text);
  collector.end();
  return collector.finish();
}

/** Collects rows, each of which differs from the good one as it says. */
export function collectRows(...changes: FeedRow[]): CollectedFeed {
  return collectText(toCsv(changes.map((change) => ({ ...goodRow, ...change }))));
}

/** Problems as `line:column code`. */
export function placesOf({ problems }: CollectedFeed): string[] {
  return problems.first.map(({ line, column, code }) => `${line}:${column} ${code}`);
}

/** What each model takes: part numbers by the model's code, in their order. */
export function fitsOf({ collected }: CollectedFeed): Record<string, string[]> {
  const { models, parts, offsets, partOf } = collected;
  return Object.fromEntries(
    models.map(({ code }, model) => [
      code,
      [...partOf.slice(offsets[model], offsets[model + 1])].map((part) => parts[part]?.number ?? "?"),
    ]),
  );
}
