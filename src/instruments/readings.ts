import * as z from "zod/mini";
import { shape as cubes } from "./cubes/reading.ts";
import { shape as filterAge } from "./filter-age/reading.ts";
import { shape as flow } from "./flow/reading.ts";
import { shape as ice } from "./ice/reading.ts";
import type { InstrumentName, Reading } from "./index.ts";
import { shape as seal } from "./seal/reading.ts";
import { shape as supply } from "./supply/reading.ts";
import { shape as temperature } from "./temperature/reading.ts";

/** The shape of each instrument's reading: for the doors at which a log comes in, and for nobody else. */
const shapes: { [Name in InstrumentName]: z.ZodMiniType<Extract<Reading, { kind: Name }>> } = {
  cubes,
  "filter-age": filterAge,
  flow,
  ice,
  seal,
  supply,
  temperature,
};

/** A reading of any of them. */
export const readingShape: z.ZodMiniType<Reading> = z.union(Object.values(shapes));
