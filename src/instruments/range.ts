import type { Texts } from "./instrument.ts";

/** A range in words, from its two ends as they are written: 'about 96' where both come to the same. */
export const rangeText = (texts: Texts, low: string, high: string): string =>
  texts(low === high ? "measure.range-one" : "measure.range", { low, high });
