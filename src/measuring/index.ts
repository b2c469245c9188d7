export {
  addDays,
  addMonths,
  type DateBounds,
  type DateProblem,
  daysBetween,
  findDateProblem,
  firstDayOf,
  fullYear,
  lastDayOf,
  monthOf,
  monthsBetween,
  wholeMonthsBetween,
} from "./calendar.ts";
export { halfWidthOf } from "./coverage.ts";
export {
  type Band,
  combine,
  type Estimate,
  estimateOf,
  guardBand,
  quotient,
  rangeOf,
  rectangular,
  type Verdict,
  verdictAgainst,
  verdictOutside,
} from "./estimate.ts";
export { askLimits, bandOf, type Limit, type LimitOf, type Limits, limitOf } from "./limits.ts";
export { checkRange, type NumberReading, type RangeProblem, readNumber } from "./number.ts";
export {
  type DateOrder,
  dateOrders,
  lastRegion,
  type Region,
  regionIn,
  type Statute,
  statutes,
} from "./region.ts";
export { type CalendarEntry, calendarFile, repeatRule } from "./reminder.ts";
export {
  fromCelsius,
  fromGrams,
  fromKilopascals,
  fromMillilitres,
  type JugUnit,
  jugUnits,
  type MassUnit,
  massUnits,
  type PressureUnit,
  pressureUnits,
  type TemperatureUnit,
  temperatureUnits,
  toCelsius,
  toGrams,
  toKilopascals,
  toMillilitres,
  type VolumeUnit,
  volumeUnits,
} from "./units.ts";
