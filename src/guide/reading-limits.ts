import type {
  CubesLimits,
  FilterLifeLimits,
  FlowLimits,
  IceLimits,
  SealLimits,
  SupplyLimits,
  TemperatureLimits,
} from "../measurement/index.ts";
import type { Limits } from "./flow.ts";

/** @throws Error for a limit that flows/limits.yaml does not have: a fault of ours, found by any test. */
export function limitOf(limits: Limits, id: string): number {
  const value = limits[id]?.value;
  if (value === undefined) throw new Error(`There is no limit "${id}"`);
  return value;
}

/** The limits of the flow test, gathered from flows/limits.yaml. */
export function flowLimits(limits: Limits): FlowLimits {
  const of = (id: string) => limitOf(limits, id);
  return {
    minimum: of("flow-minimum"),
    coverage: of("coverage"),
    agreement: of("run-agreement"),
    jugReading: of("jug-reading"),
    jugScale: of("jug-scale"),
    scaleReading: of("scale-reading"),
    timing: of("stopwatch"),
    shortestSeconds: of("flow-shortest"),
    longestSeconds: of("flow-longest"),
    largestMillilitres: of("flow-most"),
  };
}

/** The limits of a filling at the nearest tap, in l/min, and of a pressure gauge, in kPa. */
export function supplyLimits(limits: Limits): SupplyLimits {
  const of = (id: string) => limitOf(limits, id);
  return {
    leastPerMinute: of("supply-flow"),
    leastKilopascals: of("supply-pressure-least"),
    mostKilopascals: of("supply-pressure-most"),
    statutoryKilopascals: of("supply-pressure-statutory"),
    coverage: of("coverage"),
    jugReading: of("jug-reading"),
    jugScale: of("jug-scale"),
    timing: of("stopwatch"),
    gaugeError: of("gauge-error"),
    shortestSeconds: of("flow-shortest"),
    longestSeconds: of("fill-longest"),
    largestMillilitres: of("fill-most"),
    highestKilopascals: of("gauge-highest"),
  };
}

/** The limits of a reading in freezer or fridge, in °C, K and minutes. */
export function temperatureLimits(limits: Limits): TemperatureLimits {
  const of = (id: string) => limitOf(limits, id);
  return {
    limitC: of("freezer-for-ice"),
    fridgeC: of("fridge-warmest"),
    coverage: of("coverage"),
    displayError: of("display-error"),
    thermometerError: of("thermometer-error"),
    settling: { freezer: of("packs-settling"), fridge: of("glass-settling") },
    roomC: of("room-warm"),
    coldestC: of("temperature-lowest"),
    warmestC: of("temperature-highest"),
  };
}

/** The life of a filter in months and litres, and what a household draws, in litres per person and day. */
export function filterLimits(limits: Limits): FilterLifeLimits {
  const of = (id: string) => limitOf(limits, id);
  const between = (low: string, high: string) => ({ low: of(low), high: of(high) });
  return {
    months: of("filter-months"),
    litres: of("filter-litres"),
    people: of("people-most"),
    capacityLeast: of("filter-litres-least"),
    capacityMost: of("filter-litres-most"),
    perPerson: {
      ice: between("drawn-ice-least", "drawn-ice-most"),
      glasses: between("drawn-glasses-least", "drawn-glasses-most"),
      all: between("drawn-all-least", "drawn-all-most"),
    },
  };
}

/** What a day's ice is judged by, in kg per 24 h, g and h. */
export function iceLimits(limits: Limits): IceLimits {
  const of = (id: string) => limitOf(limits, id);
  const between = (low: string, high: string) => ({ low: of(low), high: of(high) });
  return {
    coverage: of("coverage"),
    pieceGrams: between("piece-least", "piece-most"),
    batchGrams: between("batch-least", "batch-most"),
    countError: of("count-error"),
    scaleReading: of("scale-reading"),
    hoursError: of("hours-error"),
    perDay: between("ice-day-low", "ice-day-high"),
    targetC: of("freezer-target"),
    flowMinimum: of("flow-minimum"),
    wanted: {
      little: between("wanted-little-least", "wanted-little-most"),
      some: between("wanted-some-least", "wanted-some-most"),
      much: between("wanted-much-least", "wanted-much-most"),
    },
    shortestHours: of("ice-hours-least"),
    longestHours: of("ice-hours-most"),
    mostKilograms: of("ice-believable"),
  };
}

/** What the weight of a few pieces is judged by, in g. */
export function cubesLimits(limits: Limits): CubesLimits {
  const of = (id: string) => limitOf(limits, id);
  return {
    coverage: of("coverage"),
    scaleReading: of("scale-reading"),
    nominalGrams: of("piece-nominal"),
    leastGrams: of("piece-small"),
    fewestPieces: of("weigh-least"),
    mostPieces: of("weigh-most"),
  };
}

/** What a survey of the door seal is judged by. */
export function sealLimits(limits: Limits): SealLimits {
  return { longestArc: limitOf(limits, "seal-arc") };
}
