import * as z from "zod/mini";
import { massUnit, number } from "../shape-parts.ts";

/** A few pieces of ice, counted and weighed together. */
export const shape = z.object({ kind: z.literal("cubes"), pieces: number, mass: number, unit: massUnit });

export type CubesReading = z.infer<typeof shape>;
