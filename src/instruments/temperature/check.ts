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
