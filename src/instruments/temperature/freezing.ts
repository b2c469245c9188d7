import { type Estimate, rangeOf } from "../../measuring/index.ts";

/** How many times as long water takes to freeze; `high` is null where it may never freeze. */
export type FreezingTimeRatio = { value: number; range: { low: number; high: number | null } };

/**
 * How many times as long a tray takes to freeze as it would at `targetC`, or null at 0 °C and above, where it never
 * does. By Plank the time goes with 1/(Tf − Ta), Tf = 0 °C, whatever the shape, the size and the air's speed, as long
 * as those stay the same: at −9 °C it is twice the time at −18 °C. The heat of cooling down is left out, so only
 * ratios hold. Never throws.
 *
 * @param targetC below 0 °C
 * @param coverage probability with which the true ratio lies in `range`, 0 to 1
 */
export function freezingTimeRatio(
  celsius: Estimate,
  targetC: number,
  coverage: number,
): FreezingTimeRatio | null {
  if (!(celsius.value < 0)) return null;
  const { low, high } = rangeOf(celsius, coverage);
  return {
    value: targetC / celsius.value,
    range: { low: targetC / low, high: high < 0 ? targetC / high : null },
  };
}
