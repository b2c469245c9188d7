import { fromGrams, type MassUnit } from "../../measuring/index.ts";
import type { IceLimits } from "./limits.ts";
import type { IceReading } from "./reading.ts";

/** A day's ice as the person counted or weighed it. */
export type InUnit = {
  unit: MassUnit | "pieces" | "batches";
  /** kg in that unit. */
  shown(kilograms: number): number;
  decimals: number;
};

/** How a reading is put into words: pieces or batches of the weight that they are taken to have, or the unit typed. */
export function inUnitOf({ by, unit = "g", pieceGrams }: IceReading, limits: IceLimits): InUnit {
  const grams = (kilograms: number) => kilograms * 1000;
  if (by === "weight")
    return { unit, shown: (kilograms) => fromGrams(grams(kilograms), unit), decimals: unit === "g" ? 0 : 2 };
  const { low, high } = by === "pieces" ? limits.pieceGrams : limits.batchGrams;
  const each = (by === "pieces" && pieceGrams) || (low + high) / 2;
  return {
    unit: by,
    shown: (kilograms) => grams(kilograms) / each,
    decimals: by === "pieces" ? 0 : 1,
  };
}
