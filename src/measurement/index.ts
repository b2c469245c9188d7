import type { DateProblem } from "./calendar.ts";
import type { FilterAgeReading } from "./filter-age.ts";
import type { FlowReading } from "./flow.ts";
import type { RangeProblem } from "./number.ts";
import type { TemperatureReading } from "./temperature.ts";

export {
  addMonths,
  type DateBounds,
  type DateProblem,
  type DateReading,
  daysBetween,
  monthsBetween,
  readDate,
  readMonth,
  wholeMonthsBetween,
} from "./calendar.ts";
export {
  type Band,
  type Estimate,
  guardBand,
  quotient,
  rectangular,
  type Verdict,
  verdictAgainst,
} from "./estimate.ts";
export {
  assessFilterAge,
  checkFittedWhen,
  type FilterAgeAssessment,
  type FilterAgeReading,
  type FittedWhen,
  type Season,
} from "./filter-age.ts";
export {
  assessFlow,
  checkFlowRun,
  type FlowAssessment,
  type FlowLimits,
  type FlowProblem,
  type FlowReading,
  type FlowRun,
} from "./flow.ts";
export { checkRange, type NumberReading, type RangeProblem, readNumber } from "./number.ts";
export {
  assessTemperature,
  checkTemperature,
  type TemperatureAssessment,
  type TemperatureLimits,
  type TemperatureReading,
} from "./temperature.ts";
export {
  fromCelsius,
  fromMillilitres,
  type TemperatureUnit,
  temperatureDifference,
  toCelsius,
  toMillilitres,
  type VolumeUnit,
} from "./units.ts";

/** A measured answer, as plain JSON that a log can store; judged by the `assess…` function of its kind. */
export type Reading = FlowReading | TemperatureReading | FilterAgeReading;

/** Why an answer cannot be right: a code and what the message in the texts needs. */
export type Problem = RangeProblem | DateProblem;
