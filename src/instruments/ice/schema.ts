import * as z from "zod/mini";
import { estimate, massUnit, number } from "../shape-parts.ts";

/** The shape of a day's ice in a kept log. */
export const shape = z.object({
  kind: z.literal("ice"),
  by: z.enum(["pieces", "weight", "batches"]),
  amount: number,
  unit: z.optional(massUnit),
  hours: number,
  pieceGrams: z.optional(number),
  wanted: z.nullable(z.enum(["little", "some", "much"])),
  celsius: z.optional(estimate),
  perSecond: z.optional(estimate),
});
