import type { PressureUnit, VolumeUnit } from "../../measuring/index.ts";
import type { SupplyReading } from "./reading.ts";

/** Readings that tests are written with. */
export const fill = (volume: number, seconds: number, unit: VolumeUnit = "l"): SupplyReading => ({
  kind: "supply",
  by: "fill",
  volume,
  unit,
  seconds,
});
export const gauge = (value: number, unit: PressureUnit = "kPa"): SupplyReading => ({
  kind: "supply",
  by: "gauge",
  value,
  unit,
});
