import { bandOf, type LimitOf } from "../../measuring/index.ts";

/** Everything that judges a day's ice; the numbers are in flows/limits.yaml. */
export const iceLimits = (of: LimitOf) => ({
  /** probability with which the true yield lies in the stated range, 0 to 1 */
  coverage: of("coverage"),
  /** what a piece and a batch may weigh, g, anything between alike */
  pieceGrams: bandOf(of, "piece-least", "piece-most"),
  batchGrams: bandOf(of, "batch-least", "batch-most"),
  /** a rough count, ± fraction of it, rectangular */
  countError: of("count-error"),
  /** reading kitchen scales, ± g, rectangular */
  scaleReading: of("scale-reading"),
  /** since when the ice was gathered, ± h, rectangular */
  hoursError: of("hours-error"),
  /** what a sound machine makes in 24 h at `targetC` and with `flowMinimum`, kg; from `enoughPerDay` it is surely sound */
  perDay: bandOf(of, "ice-day-low", "ice-day-high"),
  enoughPerDay: of("ice-day-enough"),
  /** °C, below 0 */
  targetC: of("freezer-target"),
  /** ml/s */
  flowMinimum: of("flow-minimum"),
  /** what people mean by an amount of use, kg in 24 h */
  wanted: {
    little: bandOf(of, "wanted-little-least", "wanted-little-most"),
    some: bandOf(of, "wanted-some-least", "wanted-some-most"),
    much: bandOf(of, "wanted-much-least", "wanted-much-most"),
  },
  /** range of a believable wait, h */
  shortestHours: of("ice-hours-least"),
  longestHours: of("ice-hours-most"),
  /** most ice that is believed, kg */
  mostKilograms: of("ice-believable"),
});

export type IceLimits = ReturnType<typeof iceLimits>;
