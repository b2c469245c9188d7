import * as z from "zod/mini";
import { number } from "../shape-parts.ts";

/** The shape of a temperature in a kept log. */
export const shape = z.object({
  kind: z.literal("temperature"),
  value: number,
  unit: z.enum(["C", "F"]),
  with: z.enum(["display", "thermometer"]),
  place: z.optional(z.enum(["freezer", "fridge"])),
  stood: z.optional(number),
});
