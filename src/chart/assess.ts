import type { Limits, ReadingVerdict } from "../guide/index.ts";
import {
  cubesLimits,
  filterLimits,
  flowLimits,
  iceLimits,
  limitOf,
  sealLimits,
  supplyLimits,
  temperatureLimits,
} from "../guide/index.ts";
import {
  assessCubes,
  assessFilterLife,
  assessFlow,
  assessIce,
  assessSeal,
  assessSupply,
  assessTemperature,
  checkCubes,
  checkFilterUse,
  checkFittedWhen,
  checkFlowRun,
  checkIce,
  checkSupply,
  checkTemperature,
  type Reading,
} from "../measurement/index.ts";

/**
 * The verdict on a reading taken at `at` (RFC 3339 with the person's own offset, whose first ten characters are
 * therefore the person's own day); null for a reading that cannot be right.
 */
export function verdictOn(reading: Reading, limits: Limits, at: string): ReadingVerdict | null {
  const today = at.slice(0, 10);
  switch (reading.kind) {
    case "flow": {
      const bounds = flowLimits(limits);
      if (!reading.runs.length || reading.runs.some((run) => checkFlowRun(run, bounds).length)) return null;
      return assessFlow(reading, bounds).verdict;
    }
    case "temperature": {
      const bounds = temperatureLimits(limits);
      return checkTemperature(reading, bounds) ? null : assessTemperature(reading, bounds).verdict;
    }
    case "supply": {
      const bounds = supplyLimits(limits);
      return checkSupply(reading, bounds) ? null : assessSupply(reading, bounds).verdict;
    }
    case "ice": {
      const bounds = iceLimits(limits);
      return checkIce(reading, bounds) ? null : assessIce(reading, bounds).verdict;
    }
    case "cubes": {
      const bounds = cubesLimits(limits);
      return checkCubes(reading, bounds) ? null : assessCubes(reading, bounds).verdict;
    }
    case "seal":
      return assessSeal(reading, sealLimits(limits)).verdict;
    case "filter-age": {
      const bounds = filterLimits(limits);
      const earliest = `${limitOf(limits, "earliest-year")}-01-01`;
      if (checkFittedWhen(reading.fitted, today, { earliest })) return null;
      if (reading.use && checkFilterUse(reading.use, bounds)) return null;
      return assessFilterLife(reading, today, bounds).verdict;
    }
  }
}
