/** What the files of a flow may hold, at most. Ours stay far below; without a source all of these are judgement. */
export const flowBounds = {
  /** An id; the longest of ours has 31 characters. */
  id: 64,
  /** A check and its turn, with the dot between them. */
  turnRef: 129,
  /** A digest that stands for a version. */
  version: 64,
  /** A language without its country. */
  language: 3,
  /** A unit. */
  unit: 20,
  /** A limit's source. */
  source: 1000,
  /** A list of ids, answers, turns or conditions. */
  list: 200,
  /** The parts of a condition once the names in it are spelled out; the longest of ours has 20. */
  spelled: 10_000,
  /** A set of ids with what belongs to each: causes, limits, checks. */
  entries: 1000,
  /** A number, either side of zero: no limit, prior or count of minutes comes near. */
  number: 1e9,
} as const;
