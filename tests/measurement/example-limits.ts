import type { FlowLimits, IceLimits, SupplyLimits, TemperatureLimits } from "../../src/measurement/index.ts";

/**
 * Limits for the tests, not the product's own. 150 ml in 10 s, jug ±5 ml reading and ±5 % scale, and
 * both ends of the range overstepped in 5 % each, guard 1.645 (ILAC-G8:09/2019): worked example W4. Hand timing 0.10 s: Am. J. Phys. 87(2):110 (2019).
 * Kitchen scales ±1 g: common practice, no source. The believable ranges: common practice, no source.
 */
export const flowLimits: FlowLimits = {
  minimum: 15,
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

/**
 * −15 °C, the two errors and the settling times are common practice, no source; 4.4 °C, 40 °F, is USDA FSIS advice;
 * −60 to 60 °C is what can be believed at all.
 */
export const temperatureLimits: TemperatureLimits = {
  limitC: -15,
  fridgeC: 4.4,
  coverage: 0.95,
  displayError: 2,
  thermometerError: 1,
  settling: { freezer: 8, fridge: 60 },
  roomC: 25,
  coldestC: -60,
  warmestC: 60,
};

/**
 * 9 l/min: water-company fill tests (W2). 25 psi: common practice, no source. 80 psi: UPC 608.2. 7 m of head: a UK
 * water company. Gauge ±20 kPa and the believable ranges: judgement.
 */
export const supplyLimits: SupplyLimits = {
  leastPerMinute: 9,
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

/**
 * 2000 g a day in most units, 140 g a batch (LBNL, Meier 1995); half of it as the least, and what a piece may weigh,
 * are judgement. 500 g a day as little use: EPA/600/SR-92/158. −18 °C: (EU) 2019/2016. 15 ml/s and the errors: common
 * practice, no source.
 */
export const iceLimits: IceLimits = {
  coverage: 0.98,
  pieceGrams: { low: 10, high: 25 },
  batchGrams: { low: 100, high: 180 },
  countError: 0.1,
  scaleReading: 1,
  hoursError: 0.5,
  perDay: { low: 1, high: 2 },
  targetC: -18,
  flowMinimum: 15,
  wanted: { little: { low: 0, high: 0.5 }, some: { low: 0.5, high: 1.5 }, much: { low: 1.5, high: 5 } },
  shortestHours: 3,
  longestHours: 96,
  mostKilograms: 20,
};
