import * as z from "zod/mini";
import { flowBounds, id, listOf } from "../condition/index.ts";
import {
  dateOrders,
  jugUnits,
  massUnits,
  pressureUnits,
  type Region,
  statutes,
  temperatureUnits,
  volumeUnits,
} from "../measuring/index.ts";

const offered = <Unit extends string>(units: readonly Unit[]) =>
  listOf(z.enum(units), units.length).check(z.minLength(1));
const language = z.string().check(z.maxLength(flowBounds.language), z.regex(/^[a-z]{2,3}$/));

/** The shape of a file of flows/regions/. */
export const region: z.ZodMiniType<Region> = z.strictObject({
  "default-for": z.optional(listOf(language)),
  units: z.strictObject({
    volume: offered(jugUnits),
    fill: offered(volumeUnits),
    mass: offered(massUnits),
    pressure: offered(pressureUnits),
    temperature: offered(temperatureUnits),
  }),
  "date-order": z.enum(dateOrders),
  statutes: z.partialRecord(z.enum(statutes), z.strictObject({ limit: id, says: id })),
});
