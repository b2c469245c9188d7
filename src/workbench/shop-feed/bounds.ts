/** What is taken of a shop's own feed, at most: it is held in memory whole. Without a source all of these are judgement. */
export const shopFeedBounds = {
  /** Bytes of a file, and of what it holds unpacked. */
  bytes: 200_000_000,
  /** Rows of one file. */
  rows: 1_000_000,
  /** Columns of one file. */
  columns: 500,
  /** Models in one cell. */
  modelsOfCell: 5000,
  /** Elements of an XML feed inside each other. */
  depth: 32,
  /** A mapping file, in bytes. */
  mappingBytes: 1_000_000,
  /** Kinds of a mapping. */
  kinds: 5000,
  /** A heading, a kind, a path. */
  label: 300,
} as const;
