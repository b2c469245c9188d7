import type { MassUnit } from "../../measuring/index.ts";

/**
 * The ice made in some hours: pieces counted roughly, ice weighed, or batches seen to fall. `pieceGrams` is one piece
 * as the person weighed it. `celsius` and `perSecond` (ml/s) are the freezer and the flow as measured before.
 */
export type IceReading = {
  kind: "ice";
  by: "pieces" | "weight" | "batches";
  amount: number;
  /** of a weight; grams unless said */
  unit?: MassUnit | undefined;
  hours: number;
  pieceGrams?: number | undefined;
  wanted: "little" | "some" | "much" | null;
  celsius?: { value: number; u: number } | undefined;
  perSecond?: { value: number; u: number } | undefined;
};
