import type { IceLimits } from "./limits.ts";

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
  enoughPerDay: 1,
  targetC: -18,
  flowMinimum: 15,
  wanted: { little: { low: 0, high: 0.5 }, some: { low: 0.5, high: 1.5 }, much: { low: 1.5, high: 5 } },
  shortestHours: 3,
  longestHours: 96,
  mostKilograms: 20,
};
