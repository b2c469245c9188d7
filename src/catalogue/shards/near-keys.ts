import { hashText } from "./hash.ts";

/*
 * Finding codes that one slip makes of each other (one sign other, missing or too much, or two neighbours swapped)
 * without comparing with all of them: one slip leaves one of two halves whole (the pigeonhole of Pass-Join, Li, Deng,
 * Wang and Feng, PVLDB 5(3), 2011). A code is filed under its first signs and under its last ones. The middle sign
 * belongs to neither half, so that a swap across the middle leaves one of them whole, too. A key says how many signs
 * stand at the left and at the right, not how long the code is: what is one longer or shorter lies under the same keys.
 *
 * Where too many codes share a half (a maker's whole series begins alike), its key is split into two longer ones by
 * the same argument about the rest of the code, and again, until the buckets are small.
 */

/** How many signs at the left and at the right of a code make a key, and how long the shortest code is filed so. */
type Ends = { left: number; right: number; shortest: number };

/** Buckets are known by 24 bits of their key's hash: lists of split ones stay short. */
export const bucketOf = (key: string) => hashText(key) >>> 8;

/** Whether a bucket was split. */
export type IsSplit = (bucket: number) => boolean;

/** The halves of a code of this length; codes of an odd length and of the next one have the same. */
function halvesOf(length: number): Ends[] {
  const half = Math.max(0, Math.floor((length - 1) / 2));
  const shortest = 2 * half + 1;
  const whole = { left: half, right: 0, shortest };
  return half ? [whole, { left: 0, right: half, shortest }] : [whole];
}

/**
 * The two keys that take the place of a split one; none where too little of the shortest code is left. Between them
 * one sign is left out at least, so that a swap in the middle of the rest leaves one of them whole.
 */
function splitEnds({ left, right, shortest }: Ends): Ends[] {
  const rest = shortest - left - right - 1;
  if (rest < 2) return [];
  const more = Math.floor(rest / 2);
  return [
    { left: left + more, right, shortest },
    { left, right: right + rest - more, shortest },
  ];
}

const keyOf = (fold: string, { left, right, shortest }: Ends) =>
  `${shortest}.${left}.${right}.${fold.slice(0, left)}${right ? fold.slice(-right) : ""}`;

function bucketsOf(fold: string, length: number, isSplit: IsSplit): number[] {
  const ends = halvesOf(length);
  const buckets: number[] = [];
  for (const each of ends) {
    if (each.left + each.right > fold.length) continue;
    const bucket = bucketOf(keyOf(fold, each));
    const parts = isSplit(bucket) ? splitEnds(each) : [];
    if (parts.length > 0) ends.push(...parts);
    else buckets.push(bucket);
  }
  return buckets;
}

/** The buckets that a code of the catalogue is filed in. Takes a folded code. */
export function filedIn(fold: string, isSplit: IsSplit): number[] {
  return [...new Set(bucketsOf(fold, fold.length, isSplit))];
}

/** Whether a bucket that this code is filed in can be split any more. */
export function canSplit(fold: string, bucket: number, isSplit: IsSplit): boolean {
  return !bucketsOf(fold, fold.length, (each) => each === bucket || isSplit(each)).includes(bucket);
}

/** The buckets that hold every code that one slip makes of this one: 2 to 4 where none is split, 8 at most as a rule. */
export function searchedIn(fold: string, isSplit: IsSplit): number[] {
  const lengths = [fold.length, fold.length - 1, fold.length + 1];
  return [...new Set(lengths.flatMap((length) => (length > 0 ? bucketsOf(fold, length, isSplit) : [])))];
}
