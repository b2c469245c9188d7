import * as z from "zod/mini";
import { pressureUnits, volumeUnits } from "../../measuring/index.ts";
import { number } from "../shape-parts.ts";

const kind = z.literal("supply");

/** The house supply: a vessel filled at a tap by the clock, or the pressure that a gauge shows. */
export const shape = z.discriminatedUnion("by", [
  z.object({
    kind,
    by: z.literal("fill"),
    volume: number,
    unit: z.enum(volumeUnits),
    seconds: number,
  }),
  z.object({ kind, by: z.literal("gauge"), value: number, unit: z.enum(pressureUnits) }),
]);

export type SupplyReading = z.infer<typeof shape>;
