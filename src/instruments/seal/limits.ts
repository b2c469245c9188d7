import type { LimitOf } from "../../measuring/index.ts";

/** What judges a survey; the number is in flows/limits.yaml. */
export const sealLimits = (of: LimitOf) => ({
  /** most spots on end that slip where a door is out of line, or something is in the way, and not the seal */
  longestArc: of("seal-arc"),
});

export type SealLimits = ReturnType<typeof sealLimits>;
