/** A retailer's feed, one row for each part that fits a model, read piece by piece into what a catalogue is made from. */
export { type Collector, createCollector } from "./collect.ts";
export type { CollectOptions } from "./collect-options.ts";
export {
  type ColumnName,
  columnNames,
  type OwnHeadings,
  readOwnHeadings,
  requiredColumns,
} from "./columns.ts";
export { createCsvReader } from "./csv.ts";
export { expandFitment, isPattern, mostExpanded, type PatternProblem } from "./expand.ts";
export type { Collected, CollectedFeed, Figures } from "./finish.ts";
export { type FeedLimits, feedLimits } from "./limits.ts";
export { countMissingKinds } from "./missing-kinds.ts";
export type { CollectedModel } from "./models.ts";
export type { FeedFault, FeedProblem, Place, ProblemList } from "./problem.ts";
export { readRows } from "./reader.ts";
export { longestField, longestRow } from "./row.ts";
export { UnusableFeed } from "./unusable.ts";
