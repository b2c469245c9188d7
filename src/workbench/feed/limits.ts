import { UnusableFeed } from "./unusable.ts";

/** What one feed may amount to. Past any of these it is stopped and not cut short: half a catalogue looks like a whole. */
export type FeedLimits = {
  /** Fitments in all. Forty bytes of memory each while they are sorted: 1.6 GB (judgement). */
  fitments: number;
  /** Fitments that come from patterns: a million models with sixteen parts each, and 0.6 GB (judgement). */
  expanded: number;
  /** Rows with a pattern. They are kept to the end, at some 200 bytes each: 0.1 GB (judgement). */
  patterns: number;
  /** Looks at a model's code, to see whether a pattern means it: a million models held against a hundred (judgement). */
  looks: number;
};

export const feedLimits: FeedLimits = {
  fitments: 40_000_000,
  expanded: 16_000_000,
  patterns: 500_000,
  looks: 100_000_000,
};

/** The feed that has gone past one of the limits. @param what in the plural, after "more than 5 " */
export function tooMuch(start: string, most: number, what: string, advice = ""): UnusableFeed {
  return new UnusableFeed(`${start} more than ${most} ${what}, which is the most for one feed${advice}`);
}
