import { type CollectedFeed, type CollectOptions, columnNames, createRowCollector } from "../feed/index.ts";
import type { Mapping } from "./mapping.ts";
import { type ShopFitment, type ShopTables, type Understood, understand } from "./understand.ts";

const columns = new Map(columnNames.map((name, at) => [name, at]));

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
  const understood = understand(tables, mapping, kinds, (fitment) => {
    const { line } = fitment;
    collector.row(
      columnNames.map((name) => cellOf(fitment, name)),
      columns,
      { line, placeOf: () => ({ line, column: 1 }) },
    );
  });
  const feed = collector.finish();
  const { parts, fitments } = understood;
  const rows = { rowsRead: (fitments ?? parts).read, rowsUsed: (fitments ?? parts).used };
  return { feed: { ...feed, figures: { ...feed.figures, ...rows } }, understood };
}

function cellOf(fitment: ShopFitment, name: (typeof columnNames)[number]): string {
  if (name in fitment) return String(fitment[name as keyof ShopFitment]);
  return String(fitment.part[name as keyof ShopFitment["part"]] ?? "");
}
