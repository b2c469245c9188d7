import { canSplit, filedIn } from "../../catalogue/shards/index.ts";
import { groupBy } from "./group-by.ts";

/** Where each code is filed in the index. */
export type NearbyPlan = {
  files: number;
  split: ReadonlySet<number>;
  /** Every file, one that holds nothing too: a file that does not come must mean that the catalogue was replaced. */
  codesByFile(): Iterable<[file: number, codes: number[]]>;
};

/**
 * Splits buckets that too many codes share until none is too full that can be split, and deals the buckets out to
 * files.
 */
export function planNearby(
  folds: readonly string[],
  fill: { codesInNearby: number; codesInBucket: number },
): NearbyPlan {
  const split = new Set<number>();
  const isSplit = (bucket: number) => split.has(bucket);
  for (;;) {
    const fuller = tooFull(folds, isSplit, fill.codesInBucket);
    if (fuller.length === 0) break;
    for (const bucket of fuller) split.add(bucket);
  }
  const { codes, buckets } = entriesOf(folds, isSplit);
  const files = Math.max(1, Math.ceil(codes.length / fill.codesInNearby));
  const entriesIn = groupBy(codes.length, files, (entry) => (buckets[entry] as number) % files);
  return {
    files,
    split,
    *codesByFile() {
      for (let file = 0; file < files; file++)
        yield [file, Array.from(entriesIn(file), (entry) => codes[entry] as number)];
    },
  };
}

/** Each code with each bucket that it is filed in, as two lists of the same length. */
function entriesOf(folds: readonly string[], isSplit: (bucket: number) => boolean) {
  const codes: number[] = [];
  const buckets: number[] = [];
  for (const [code, fold] of folds.entries()) {
    for (const bucket of filedIn(fold, isSplit)) {
      codes.push(code);
      buckets.push(bucket);
    }
  }
  return { codes, buckets };
}

/** Buckets with more codes than wanted, of those that can be split. */
function tooFull(folds: readonly string[], isSplit: (bucket: number) => boolean, most: number): number[] {
  const counts = new Map<number, number>();
  const samples = new Map<number, string>();
  for (const fold of folds) {
    for (const bucket of filedIn(fold, isSplit)) {
      const count = (counts.get(bucket) ?? 0) + 1;
      counts.set(bucket, count);
      if (count > most) samples.set(bucket, fold);
    }
  }
  return [...samples].flatMap(([bucket, fold]) => (canSplit(fold, bucket, isSplit) ? [bucket] : []));
}
