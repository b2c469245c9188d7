import type { MassUnit } from "../../measuring/index.ts";

/** A single piece is spoken of in the smaller unit of the kind that was typed. */
export const pieceUnit: Record<MassUnit, MassUnit> = { g: "g", kg: "g", oz: "oz", lb: "oz" };
