import type { LimitOf } from "../../measuring/index.ts";

/** Everything that judges a temperature; the numbers are in flows/limits.yaml. */
export const temperatureLimits = (of: LimitOf) => ({
  /** warmest freezer that is good for ice, and warmest good fridge, °C */
  limitC: of("freezer-for-ice"),
  fridgeC: of("fridge-warmest"),
  /** probability with which the true temperature lies in the stated range, 0 to 1 */
  coverage: of("coverage"),
  /** error of the appliance's display, ± K, rectangular */
  displayError: of("display-error"),
  /** error of a household thermometer, ± K, rectangular */
  thermometerError: of("thermometer-error"),
  /** time constant of a thermometer between frozen packs, and in a glass of water in the fridge, minutes */
  settling: {
    freezer: of("packs-settling"),
    "ice-maker": of("packs-settling"),
    fridge: of("glass-settling"),
  },
  /** where a thermometer comes from, °C */
  roomC: of("room-warm"),
  /** range of a believable answer, °C */
  coldestC: of("temperature-lowest"),
  warmestC: of("temperature-highest"),
});

export type TemperatureLimits = ReturnType<typeof temperatureLimits>;
