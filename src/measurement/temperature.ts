import {
  type Band,
  type Estimate,
  guardBand,
  rectangular,
  type Verdict,
  verdictAgainst,
} from "./estimate.ts";
import { checkRange, type RangeProblem } from "./number.ts";
import { fromCelsius, type TemperatureUnit, toCelsius } from "./units.ts";

/** A freezer temperature, read off the appliance's own display or a thermometer laid inside. */
export type TemperatureReading = {
  kind: "temperature";
  value: number;
  unit: TemperatureUnit;
  with: "display" | "thermometer";
};

/** Everything that judges a temperature; the numbers live with the flow data. */
export type TemperatureLimits = {
  /** warmest good temperature, °C */
  limitC: number;
  /** guard band, in standard uncertainties */
  guard: number;
  /** error of the appliance's display, ± K, rectangular */
  displayError: number;
  /** error of a household thermometer, ± K, rectangular */
  thermometerError: number;
  /** range of a believable answer, °C */
  coldestC: number;
  warmestC: number;
};

/** `band` is the zone around the limit that is too close to call; all in °C. */
export type TemperatureAssessment = { celsius: Estimate; verdict: Verdict; band: Band };

/** Whether a temperature can be true, or why not, with the range in the unit in which it was typed. */
export function checkTemperature(
  { value, unit }: TemperatureReading,
  { coldestC, warmestC }: TemperatureLimits,
): RangeProblem | null {
  return checkRange(value, { min: fromCelsius(coldestC, unit), max: fromCelsius(warmestC, unit) });
}

/** The temperature in °C and whether it is cold enough; colder passes. Never throws. */
export function assessTemperature(
  reading: TemperatureReading,
  limits: TemperatureLimits,
): TemperatureAssessment {
  const error = reading.with === "display" ? limits.displayError : limits.thermometerError;
  const celsius = { value: toCelsius(reading.value, reading.unit), u: rectangular(error) };
  const { limitC: limit, guard } = limits;
  return {
    celsius,
    verdict: verdictAgainst(celsius, { limit, better: "below", guard }),
    band: guardBand(celsius.u, limit, guard),
  };
}
