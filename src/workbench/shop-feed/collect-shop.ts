import { type CollectedFeed, type CollectOptions, columnNames, createRowCollector } from "../feed/index.ts";
import type { Mapping } from "./mapping.ts";
import { type ShopFitments, type ShopTables, type Understood, understand } from "./understand.ts";

const columns = new Map(columnNames.map((name, at) => [name, at]));
const modelAt = columnNames.indexOf("model");

/**
 * Collects a shop's own feed as if it had come in our columns, a row a fitment.
 * @param mapping how it is read
 * @param kinds of the trade
 * @throws UnusableFeed where the mapping does not go with the feed, or where it amounts to too much
 */
export function collectShopFeed(
  tables: ShopTables,
  mapping: Mapping,
  kinds: readonly string[],
  options: CollectOptions,
): { feed: CollectedFeed; understood: Understood } {
  const collector = createRowCollector(options);
  const understood = understand(tables, mapping, kinds, (row) => {
    const { line, models } = row;
    const at = { line, placeOf: () => ({ line, column: 1 }) };
    const cells = columnNames.map((name) => cellOf(row, name));
    for (const model of models) {
      cells[modelAt] = model;
      collector.row(cells, columns, at);
    }
  });
  const feed = collector.finish();
  const { parts, fitments } = understood;
  const rows = { rowsRead: (fitments ?? parts).read, rowsUsed: (fitments ?? parts).used };
  return { feed: { ...feed, figures: { ...feed.figures, ...rows } }, understood };
}

function cellOf(row: ShopFitments, name: (typeof columnNames)[number]): string {
  if (name in row) return String(row[name as keyof ShopFitments]);
  return String(row.part[name as keyof ShopFitments["part"]] ?? "");
}
