import { checkRange, fromCelsius, type RangeProblem } from "../../measuring/index.ts";
import type { TemperatureLimits } from "./limits.ts";
import type { TemperatureReading } from "./reading.ts";

/** Whether a temperature can be true, or why not, with the range in the unit in which it was typed. */
export function checkTemperature(
  { value, unit }: TemperatureReading,
  { coldestC, warmestC }: TemperatureLimits,
): RangeProblem | null {
  return checkRange(value, { min: fromCelsius(coldestC, unit), max: fromCelsius(warmestC, unit) });
}

/** Whether a minus may have been left out: no freezer shows degrees above 0 °C for long, and many people never say it. */
export function mayLackMinus({ value, unit, place }: TemperatureReading): boolean {
  return place !== "fridge" && unit === "C" && value > 0;
}
