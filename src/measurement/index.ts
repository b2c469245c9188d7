import type { DateProblem } from "./calendar.ts";
import type { CubesReading } from "./cubes.ts";
import type { FilterAgeReading } from "./filter-age.ts";
import type { FlowReading } from "./flow.ts";
import type { IceReading } from "./ice.ts";
import type { RangeProblem } from "./number.ts";
import type { SealReading } from "./seal.ts";
import type { SupplyReading } from "./supply.ts";
import type { TemperatureReading } from "./temperature.ts";

export {
  addDays,
  addMonths,
  type DateBounds,
  type DateProblem,
  daysBetween,
  monthsBetween,
  wholeMonthsBetween,
} from "./calendar.ts";
export {
  assessCubes,
  type CubesAssessment,
  type CubesLimits,
  type CubesReading,
  checkCubes,
} from "./cubes.ts";
export {
  type Band,
  type Estimate,
  estimateOf,
  guardBand,
  quotient,
  rangeOf,
  rectangular,
  type Verdict,
  verdictAgainst,
} from "./estimate.ts";
export {
  assessFilterAge,
  checkFittedWhen,
  type FilterAgeAssessment,
  type FilterAgeReading,
  type FilterUse,
  type FittedWhen,
  type Season,
} from "./filter-age.ts";
export {
  assessFilterLife,
  checkFilterUse,
  type FilterLifeAssessment,
  type FilterLifeLimits,
} from "./filter-life.ts";
export { assessFilterShare, type FilterShare, pointOf, type SlowPoint } from "./filter-share.ts";
export {
  assessFlow,
  checkFlowRun,
  type FlowAssessment,
  type FlowLimits,
  type FlowProblem,
  type FlowReading,
  type FlowRun,
} from "./flow.ts";
export { type FreezingTimeRatio, freezingTimeRatio } from "./freezing.ts";
export { assessIce, checkIce, type IceAssessment, type IceLimits, type IceReading } from "./ice.ts";
export { checkRange, type NumberReading, type RangeProblem, readNumber } from "./number.ts";
export { type CalendarEntry, calendarFile, repeatRule } from "./reminder.ts";
export {
  assessSeal,
  type SealAssessment,
  type SealLimits,
  type SealPattern,
  type SealReading,
} from "./seal.ts";
export {
  assessSupply,
  checkSupply,
  type SupplyAssessment,
  type SupplyLimits,
  type SupplyProblem,
  type SupplyReading,
} from "./supply.ts";
export {
  assessTemperature,
  checkTemperature,
  type TemperatureAssessment,
  type TemperatureLimits,
  type TemperatureReading,
} from "./temperature.ts";
export {
  fromCelsius,
  fromGrams,
  fromKilopascals,
  fromMillilitres,
  type JugUnit,
  type MassUnit,
  type PressureUnit,
  type TemperatureUnit,
  temperatureDifference,
  toCelsius,
  toGrams,
  toKilopascals,
  toMillilitres,
  type VolumeUnit,
} from "./units.ts";

/** A measured answer, as plain JSON that a log can store; judged by the `assess…` function of its kind. */
export type Reading =
  | FlowReading
  | TemperatureReading
  | FilterAgeReading
  | SupplyReading
  | IceReading
  | CubesReading
  | SealReading;

/** Why an answer cannot be right: a code and what the message in the texts needs. */
export type Problem = RangeProblem | DateProblem;
