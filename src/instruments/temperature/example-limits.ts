import type { TemperatureLimits } from "./limits.ts";

/**
 * −15 °C, the two errors and the settling times are common practice, no source; 4.4 °C, 40 °F, is USDA FSIS advice;
 * −60 to 60 °C is what can be believed at all.
 */
export const temperatureLimits: TemperatureLimits = {
  limitC: -15,
  fridgeC: 4.4,
  coverage: 0.95,
  displayError: 2,
  thermometerError: 1,
  settling: { freezer: 8, "ice-maker": 8, fridge: 60 },
  roomC: 25,
  coldestC: -60,
  warmestC: 60,
};
