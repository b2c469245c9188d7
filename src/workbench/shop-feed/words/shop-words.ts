import type { ColumnName } from "../../feed/index.ts";

/**
 * What shops and the trade call things in one language: common practice, no source. Small letters; headings are compared
 * without marks, so `Art.-Nr.` is `art nr`. What stands first counts more.
 */
export type ShopWords = {
  /** Headings by what they mean. */
  headings: Partial<Record<ColumnName, readonly string[]>>;
  /** Words that make a heading mean something else: an old price is none. */
  spoilers: Partial<Record<ColumnName, readonly string[]>>;
  /** What a cell of stock says. */
  stock: Record<"in-stock" | "few" | "out-of-stock", readonly string[]>;
  /** Names of parts by kind, in the singular. */
  kinds: Record<string, readonly string[]>;
  /** Behind these words a name speaks of what the part is for. */
  before: readonly string[];
  /** What joins two parts. */
  joins: readonly string[];
  /** What may stand behind a part's name and change nothing; with another word it may be a piece of that part. */
  after: readonly string[];
  /** With one of these a name means a piece of that part: a filter housing is no filter. */
  pieces: readonly string[];
  /** Kinds that others are parts of: named after another one, they say where that one belongs. */
  wholes: readonly string[];
  /** True where a part's name begins with what it is: then nothing unknown may stand in front. */
  isNameFirst?: boolean;
  /** Names that may mean several kinds; they are asked about. */
  unsure?: Record<string, readonly string[]>;
};
