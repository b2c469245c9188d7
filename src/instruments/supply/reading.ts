import type { PressureUnit, VolumeUnit } from "../../measuring/index.ts";

/** The house supply: a vessel filled at a tap by the clock, or the pressure that a gauge shows. */
export type SupplyReading =
  | { kind: "supply"; by: "fill"; volume: number; unit: VolumeUnit; seconds: number }
  | { kind: "supply"; by: "gauge"; value: number; unit: PressureUnit };
