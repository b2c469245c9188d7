import type { FlowLimits } from "./limits.ts";

/**
 * Limits for the tests, not the product's own. 150 ml in 10 s, jug ±5 ml reading and ±5 % scale, and
 * both ends of the range overstepped in 5 % each, guard 1.645 (ILAC-G8:09/2019): worked example W4. Hand timing 0.10 s: Am. J. Phys. 87(2):110 (2019).
 * Kitchen scales ±1 g: common practice, no source. The believable ranges: common practice, no source.
 */
export const flowLimits: FlowLimits = {
  minimum: 15,
  aimSeconds: 10,
  coverage: 0.9,
  agreement: 2.3,
  jugReading: 5,
  jugScale: 0.05,
  scaleReading: 1,
  timing: 0.1,
  shortestSeconds: 1,
  longestSeconds: 120,
  largestMillilitres: 5000,
};
