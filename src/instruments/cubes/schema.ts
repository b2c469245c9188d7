import * as z from "zod/mini";
import { massUnit, number } from "../shape-parts.ts";

/** The shape of a weighing in a kept log. */
export const shape = z.object({ kind: z.literal("cubes"), pieces: number, mass: number, unit: massUnit });
