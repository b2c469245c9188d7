import type { SupplyLimits } from "./limits.ts";

/**
 * 9 l/min: water-company fill tests (W2); less than 4 as weak is judgement. 25 psi: common practice, no source. 80 psi: UPC 608.2. 7 m of head: a UK
 * water company. Gauge ±20 kPa and the believable ranges: judgement.
 */
export const supplyLimits: SupplyLimits = {
  leastPerMinute: 4,
  plentyPerMinute: 9,
  leastKilopascals: 172,
  mostKilopascals: 552,
  statutoryKilopascals: 69,
  coverage: 0.95,
  jugReading: 5,
  jugScale: 0.05,
  timing: 0.1,
  gaugeError: 20,
  shortestSeconds: 3,
  longestSeconds: 600,
  largestMillilitres: 50_000,
  highestKilopascals: 1600,
};
