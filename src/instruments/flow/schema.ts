import * as z from "zod/mini";
import { readingBounds } from "../bounds.ts";
import { number } from "../shape-parts.ts";

const run = z.object({
  volume: number,
  unit: z.enum(["ml", "us-fl-oz", "us-cup", "g"]),
  seconds: number,
});
const runs = z.array(run).check(z.maxLength(readingBounds.runs));

/** The shape of a flow in a kept log. */
export const shape = z.object({ kind: z.literal("flow"), runs, before: z.optional(runs) });
