import { bandOf, type LimitOf } from "../../measuring/index.ts";

/** Everything that judges the life of a filter; the numbers are in flows/limits.yaml. All are above zero. */
export const filterLimits = (of: LimitOf) => ({
  /** life in whole months */
  months: of("filter-months"),
  /** life in litres of a cartridge with nothing printed on it */
  litres: of("filter-litres"),
  /** most people whom a home machine serves */
  people: of("people-most"),
  /** range of a believable print on a cartridge, litres */
  capacityLeast: of("filter-litres-least"),
  capacityMost: of("filter-litres-most"),
  /** litres that one person draws in a day */
  perPerson: {
    ice: bandOf(of, "drawn-ice-least", "drawn-ice-most"),
    glasses: bandOf(of, "drawn-glasses-least", "drawn-glasses-most"),
    all: bandOf(of, "drawn-all-least", "drawn-all-most"),
  },
});

/** The first day on which a filter may believably have been fitted, 'YYYY-MM-DD'. */
export const earliestDay = (of: LimitOf) => `${of("earliest-year")}-01-01`;

export type FilterLifeLimits = ReturnType<typeof filterLimits>;
