import * as z from "zod/mini";

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

/** A set of entries by key. JSON Schema gets the bound as a note: zod itself cannot bound a record. */
export function recordOf<Key extends z.core.$ZodRecordKey, Value extends z.core.$ZodType>(
  key: Key,
  value: Value,
  most: number = flowBounds.entries,
) {
  const isSmall = z.refine<Record<string, unknown>>((entries) => Object.keys(entries).length <= most, {
    error: `more than ${most} entries`,
  });
  const bounded = z.record(key, value).check(isSmall as never);
  z.globalRegistry.add(bounded, { maxProperties: most });
  return bounded;
}

/** A list that is no longer than any of ours could be. */
export const listOf = <Item extends z.core.$ZodType>(item: Item, most: number = flowBounds.list) =>
  z.array(item).check(z.maxLength(most));
