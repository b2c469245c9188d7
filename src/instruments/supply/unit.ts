import { fromKilopascals, fromMillilitres, toMillilitres } from "../../measuring/index.ts";
import type { Texts } from "../instrument.ts";
import type { SupplyReading } from "./reading.ts";

/** A supply as the person reads it off their vessel or gauge. */
export type InUnit = {
  /** l/min or kPa in that unit. */
  shown(value: number): number;
  /** As many as say about a tenth of a litre. */
  decimals: number;
  unit(texts: Texts): string;
};

/** How a reading is put into words: in the unit that was typed. */
export function inUnitOf(reading: SupplyReading): InUnit {
  const { by, unit } = reading;
  const named = (texts: Texts) => texts(`measure.unit-${unit}`);
  if (by === "gauge") return { shown: (value) => fromKilopascals(value, unit), decimals: 1, unit: named };
  return {
    shown: (value) => fromMillilitres(value * 1000, unit),
    decimals: Math.max(0, Math.round(Math.log10(toMillilitres(1, unit) / 100))),
    unit: (texts) => texts("measure.unit-per-minute", { unit: named(texts) }),
  };
}
