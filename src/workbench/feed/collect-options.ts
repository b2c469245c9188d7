import type { OwnHeadings } from "./columns.ts";
import type { FeedLimits } from "./limits.ts";
import type { ModelDefaults } from "./models.ts";

/** What a shop says about its feed. */
export type CollectOptions = {
  /** Up to how many pieces in stock count as few. */
  few: number;
  shop?: string;
  own?: OwnHeadings;
  defaults?: Partial<ModelDefaults>;
  /** Most problems that are kept whole; all are counted. */
  mostProblems?: number;
  /** What the feed may amount to, where it differs from `feedLimits`. */
  limits?: Partial<FeedLimits>;
};
