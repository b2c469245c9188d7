import * as z from "zod/mini";
import { flowBounds } from "./bounds.ts";

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
