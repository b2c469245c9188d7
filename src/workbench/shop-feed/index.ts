/** A shop's own feed, in whatever shape it comes, understood by a mapping and collected as if it had our columns. */
export { shopFeedBounds } from "./bounds.ts";
export { collectShopFeed } from "./collect-shop.ts";
export { type Decoded, decode } from "./decode.ts";
export { type FileGuess, guessMapping, type Said, withSaid } from "./guess-mapping.ts";
export { type Inspection, inspectFeed } from "./inspect.ts";
export { tellKind } from "./kinds.ts";
export type { Loss } from "./losses.ts";
export { type Mapping, mappingSchema, readKinds, readMapping } from "./mapping.ts";
export { findLostZeros } from "./model-codes.ts";
export { findSplit, readSplit, saySplit, splitCell } from "./models-split.ts";
export { decimalOf, readMoney } from "./money.ts";
export { readTable } from "./read-table.ts";
export { readStock } from "./stock.ts";
export type { Table } from "./table.ts";
export { type RowShare, type ShopTables, type Understood, understand } from "./understand.ts";
export { tooBig, unpack } from "./unpack.ts";
