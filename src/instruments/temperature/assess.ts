import {
  type Band,
  type Estimate,
  estimateOf,
  guardBand,
  rangeOf,
  toCelsius,
  type Verdict,
  verdictAgainst,
} from "../../measuring/index.ts";
import type { TemperatureLimits } from "./limits.ts";
import type { TemperatureReading } from "./reading.ts";

/** All in °C. */
export type TemperatureAssessment = {
  celsius: Estimate;
  /** where the true temperature lies, with the stated probability */
  range: Band;
  verdict: Verdict;
  /** the limit of its place, and the zone around it that is too close to call */
  limit: number;
  band: Band;
  /** the thermometer is no further from the end than half of its own error; true where nobody said how long it stood */
  settled: boolean;
  /** how many minutes in all it takes to get there, rounded up to 5 */
  minutesNeeded: number;
};

/**
 * The temperature in °C and whether it is cold enough for its place; colder passes. Never throws.
 *
 * A thermometer nears the end like e^(−t/τ) (Newton's law of cooling), so
 * what it still has to fall follows from what it fell since it left the room. Room and τ are guesses: up to twice as
 * much counts as an even error, for one of just that width would be wrong about each that falls as it should.
 */
export function assessTemperature(
  reading: TemperatureReading,
  limits: TemperatureLimits,
): TemperatureAssessment {
  const { coverage, thermometerError, coldestC, warmestC } = limits;
  const place = reading.place ?? "freezer";
  const limit = place === "fridge" ? limits.fridgeC : limits.limitC;
  const settling = limits.settling[place];
  const byThermometer = reading.with === "thermometer";
  const value = toCelsius(reading.value, reading.unit);
  // The room was warmer than the reading, at least by what a thermometer can tell: some kitchens are hot.
  const fallen = Math.max(limits.roomC - value, thermometerError);
  const left = Math.exp(-Math.max(0, reading.stood ?? 0) / settling);
  const waited = byThermometer && reading.stood !== undefined;
  const lag = waited ? Math.min((fallen * left) / (1 - left), warmestC - coldestC) : 0;
  const error = byThermometer ? thermometerError : limits.displayError;
  const celsius = estimateOf(value, { evenly: waited ? [error, 2 * lag] : [error] });
  const minutes = settling * Math.log((fallen + lag) / (thermometerError / 2));
  return {
    celsius,
    range: rangeOf(celsius, coverage),
    // A display shows its own sensor or its setting, neither of which is where the ice is made.
    verdict:
      place === "ice-maker" && !byThermometer
        ? "unclear"
        : verdictAgainst(celsius, { limit, better: "below", coverage }),
    limit,
    band: guardBand(celsius, limit, coverage),
    settled: lag <= thermometerError / 2,
    minutesNeeded: byThermometer ? Math.ceil(minutes / 5) * 5 : 0,
  };
}
