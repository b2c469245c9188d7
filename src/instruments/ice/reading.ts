import * as z from "zod/mini";
import { estimate, massUnit, number } from "../shape-parts.ts";

/** The ice made in some hours: pieces counted roughly, ice weighed, or batches seen to fall. */
export const shape = z.object({
  kind: z.literal("ice"),
  by: z.enum(["pieces", "weight", "batches"]),
  amount: number,
  /** of a weight; grams unless said */
  unit: z.optional(massUnit),
  hours: number,
  /** one piece as the person weighed it */
  pieceGrams: z.optional(number),
  wanted: z.nullable(z.enum(["little", "some", "much"])),
  /** the freezer and the flow (ml/s) as measured before */
  celsius: z.optional(estimate),
  perSecond: z.optional(estimate),
});

export type IceReading = z.infer<typeof shape>;
