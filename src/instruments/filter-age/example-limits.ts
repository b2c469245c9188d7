import type { FilterLifeLimits } from "./limits.ts";

/**
 * Six months, or the litres, whichever comes first; 200 US gal (757 l) is a common rating: common practice, no source.
 * Litres per person and day: 500 g of ice a household (EPA/600/SR-92/158), the rest judgement.
 */
export const filterLifeLimits: FilterLifeLimits = {
  months: 6,
  litres: 750,
  people: 20,
  capacityLeast: 50,
  capacityMost: 10_000,
  perPerson: {
    ice: { low: 0.05, high: 0.5 },
    glasses: { low: 0.25, high: 1 },
    all: { low: 1, high: 3 },
  },
};
