import * as z from "zod/mini";
import { date, number } from "../shape-parts.ts";

const season = z.enum(["spring", "summer", "autumn", "winter"]);

/**
 * When the water filter was fitted, as well as the householder knows it. 'since-moving' means that nobody
 * changed it since they moved in during `month`: it is at least that old. Dates are 'YYYY-MM-DD' and 'YYYY-MM'.
 * A season counts as northern unless told otherwise.
 */
const fitted = z.union([
  z.object({ by: z.literal("date"), date }),
  z.object({ by: z.literal("month"), month: date }),
  z.object({ by: z.literal("since-moving"), month: date }),
  z.object({
    by: z.literal("season"),
    season,
    year: number,
    hemisphere: z.optional(z.enum(["north", "south"])),
  }),
]);

/**
 * What draws on the filter: how many people, and what they take, only ice, some glasses of water as well, or all that
 * they drink. `capacity` is what is printed on the cartridge, in litres.
 */
const use = z.object({
  people: number,
  habit: z.enum(["ice", "glasses", "all"]),
  capacity: z.optional(number),
});

/** A filter's age. */
export const shape = z.object({ kind: z.literal("filter-age"), fitted, use: z.optional(use) });

export type Season = z.infer<typeof season>;
export type FittedWhen = z.infer<typeof fitted>;
export type FilterUse = z.infer<typeof use>;
export type FilterAgeReading = z.infer<typeof shape>;
