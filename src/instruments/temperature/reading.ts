import * as z from "zod/mini";
import { temperatureUnits } from "../../measuring/index.ts";
import { number } from "../shape-parts.ts";
import { temperaturePlaces } from "./places.ts";

/**
 * A temperature, read off the appliance's own display or off a thermometer between frozen packs or in a glass of
 * water. `place` is the freezer unless said. Of the
 * `ice-maker` no display tells. `stood` is how long the thermometer was in there, in minutes; it counts as
 * settled unless said.
 */
export const shape = z.object({
  kind: z.literal("temperature"),
  value: number,
  unit: z.enum(temperatureUnits),
  with: z.enum(["display", "thermometer"]),
  place: z.optional(z.enum(temperaturePlaces)),
  stood: z.optional(number),
});

export type TemperatureReading = z.infer<typeof shape>;
