import type { TemperatureUnit } from "../../measuring/index.ts";

/**
 * A temperature, read off the appliance's own display or off a thermometer between frozen packs or in a glass of
 * water. `place` is the freezer unless said. `stood` is how long the thermometer was in there, in minutes; it counts as
 * settled unless said.
 */
export type TemperatureReading = {
  kind: "temperature";
  value: number;
  unit: TemperatureUnit;
  with: "display" | "thermometer";
  place?: "freezer" | "fridge" | undefined;
  stood?: number | undefined;
};
