import * as z from "zod/mini";
import { number } from "../shape-parts.ts";

const kind = z.literal("supply");

/** The shape of a supply in a kept log. */
export const shape = z.discriminatedUnion("by", [
  z.object({
    kind,
    by: z.literal("fill"),
    volume: number,
    unit: z.enum(["ml", "l", "us-fl-oz", "us-cup", "us-qt", "us-gal", "uk-pint", "g"]),
    seconds: number,
  }),
  z.object({ kind, by: z.literal("gauge"), value: number, unit: z.enum(["psi", "bar", "kPa"]) }),
]);
