/**
 * What is taken of a shop's catalogue and of a typed model code, at most. Texts count in UTF-16 units, as browsers do.
 * What is longer was pasted by mistake or means harm; without a source all of these are judgement.
 */
export const bounds = {
  /** Letters and digits of one model code. Plates stay well below (common practice, no source). */
  code: 40,
  /** A typed code with its separators; cut before anything else is done with it, as marks in a row cost their square. */
  typedCode: 200,
  /** A code, a number, a brand, a kind. */
  label: 80,
  /** A name on a part's card; a longer one is cut. */
  name: 200,
  /** A name as it comes; a longer one is no name. */
  writtenName: 10_000,
  /** An address of a page. */
  link: 2000,
  /** Models of a catalogue in one file; more belong in many files. */
  models: 20_000,
  /** Parts of a catalogue in one file. */
  parts: 50_000,
  /** Models that one part fits: a filter may fit all there are. */
  fits: 20_000,
  /** Models that all parts fit, taken together. */
  allFits: 500_000,
  /** Older numbers that one part stands in for. */
  replaces: 200,
  /** Minutes for fitting a part. */
  minutes: 999_999,
  /** Models of a catalogue in many files. */
  allModels: 10_000_000,
  /** Files of its index. */
  files: 1_000_000,
  /** What the manifest says of its files, as text: two bits a file, and a list of buckets. */
  manifestText: 2_000_000,
  /** Models of one file of many. */
  shardModels: 5000,
  /** Parts, or longer codes, that one file of many tells of. */
  shardRows: 50_000,
  /** Codes of a file of the index, as text. */
  nearbyText: 1_000_000,
} as const;
