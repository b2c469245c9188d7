import * as z from "zod/mini";
import { date, number } from "../shape-parts.ts";

const fitted = z.union([
  z.object({ by: z.literal("date"), date }),
  z.object({ by: z.enum(["month", "since-moving"]), month: date }),
  z.object({
    by: z.literal("season"),
    season: z.enum(["spring", "summer", "autumn", "winter"]),
    year: number,
    hemisphere: z.optional(z.enum(["north", "south"])),
  }),
]);

/** The shape of a filter's age in a kept log. */
export const shape = z.object({
  kind: z.literal("filter-age"),
  fitted,
  use: z.optional(
    z.object({
      people: number,
      habit: z.enum(["ice", "glasses", "all"]),
      capacity: z.optional(number),
    }),
  ),
});
