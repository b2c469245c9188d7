import * as z from "zod/mini";
import { jugUnits } from "../../measuring/index.ts";
import { readingBounds } from "../bounds.ts";
import { number } from "../shape-parts.ts";

/** Water caught in one go. Grams mean that it was weighed on kitchen scales, other units a measuring jug. */
const run = z.object({
  volume: number,
  unit: z.enum(jugUnits),
  seconds: number,
});
const runs = z.array(run).check(z.maxLength(readingBounds.runs));

/**
 * One or more runs of the dispenser, all through the same water path; `before` has the runs that they are compared
 * with, made with the filter in place.
 */
export const shape = z.object({ kind: z.literal("flow"), runs, before: z.optional(runs) });

export type FlowRun = z.infer<typeof run>;
export type FlowReading = z.infer<typeof shape>;
