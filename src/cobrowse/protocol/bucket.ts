/** How many messages may go: `level` of them at the instant `at`, in milliseconds. */
export type Bucket = { level: number; at: number };

/** So many at once, and so many a second over time. */
export type Pace = { perSecond: number; burst: number };

/**
 * Takes one message out of a bucket that fills over time.
 * @returns the bucket after it, or null where nothing is left; a clock set back fills nothing
 */
export function takeOne(bucket: Bucket, now: number, { perSecond, burst }: Pace): Bucket | null {
  const passed = Math.max(0, now - bucket.at) / 1000;
  const level = Math.min(burst, bucket.level + passed * perSecond);
  return level < 1 ? null : { level: level - 1, at: now };
}
