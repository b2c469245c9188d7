import type { JugUnit, MassUnit, PressureUnit, TemperatureUnit, VolumeUnit } from "./units.ts";

/** Units that are offered, the usual one first. */
type Offered<Unit> = readonly Unit[];

/** What holds where a reader lives, whatever language they read: a file of flows/regions/. */
export type Region = {
  /** Languages whose readers are taken to live here where their tag names no region of ours. */
  "default-for"?: readonly string[] | undefined;
  units: {
    /** Water in a jug, and in anything larger. */
    volume: Offered<JugUnit>;
    fill: Offered<VolumeUnit>;
    mass: Offered<MassUnit>;
    pressure: Offered<PressureUnit>;
    temperature: Offered<TemperatureUnit>;
  };
  "date-order": DateOrder;
  /** What the law grants a household: the limit, and which text of `statutes.` is shown where less is measured. */
  statutes: { [Each in (typeof statutes)[number]]?: Statute };
};

export const dateOrders = ["day month year", "month day year", "year month day"] as const;
export const statutes = ["supply-pressure"] as const;
export type DateOrder = (typeof dateOrders)[number];
export type Statute = { limit: string; says: string };

/** The region of readers whose language says nothing of where they live. */
export const lastRegion = "GB";

/**
 * The region of a language's readers: the one that its tag names, or the one that is the default for the language, or
 * GB. `regionIn(regions, "en-AU")` is GB's as long as there is none for AU.
 * @param regions by ISO 3166 code, as flows/regions/ has them; GB is among them
 * @param tag BCP 47
 */
export function regionIn(regions: Record<string, Region>, tag: string): Region {
  const [language = "", ...rest] = tag.split("-");
  const named = rest.find((part) => Object.hasOwn(regions, part.toUpperCase()))?.toUpperCase();
  const usual = Object.keys(regions).find((code) => regions[code]?.["default-for"]?.includes(language));
  return regions[named ?? usual ?? lastRegion] as Region;
}
