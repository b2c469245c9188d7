import {
  type Band,
  type Estimate,
  estimateOf,
  guardBand,
  quotient,
  rangeOf,
  type Verdict,
  verdictOutside,
} from "./estimate.ts";
import { checkRange, type RangeProblem } from "./number.ts";
import {
  fromKilopascals,
  fromMillilitres,
  type PressureUnit,
  toKilopascals,
  toMillilitres,
  type VolumeUnit,
} from "./units.ts";

/** The house supply: a vessel filled at a tap by the clock, or the pressure that a gauge shows. */
export type SupplyReading =
  | { kind: "supply"; by: "fill"; volume: number; unit: VolumeUnit; seconds: number }
  | { kind: "supply"; by: "gauge"; value: number; unit: PressureUnit };

/** Everything that judges a supply; the numbers live with the flow data. All are above zero. */
export type SupplyLimits = {
  /** least good flow at a tap, l/min */
  leastPerMinute: number;
  /** least good pressure at the appliance, and the most that household fittings take, kPa */
  leastKilopascals: number;
  mostKilopascals: number;
  /** pressure that the water company owes, kPa */
  statutoryKilopascals: number;
  /** probability with which the true value lies in the stated range, 0 to 1 */
  coverage: number;
  /** reading the vessel's marks, ± ml, rectangular */
  jugReading: number;
  /** the vessel's marks being in the wrong place, ± fraction of the volume, rectangular */
  jugScale: number;
  /** timing one fill by hand, standard uncertainty in s */
  timing: number;
  /** what a household gauge is out by, ± kPa, rectangular */
  gaugeError: number;
  /** range of a believable fill: s, and the most in ml */
  shortestSeconds: number;
  longestSeconds: number;
  largestMillilitres: number;
  /** highest believable pressure, kPa */
  highestKilopascals: number;
};

/** What a supply comes to: l/min for a fill, kPa for a gauge. */
export type SupplyAssessment = {
  value: Estimate;
  /** where the true value lies, with the stated probability */
  range: Band;
  /** the limit that the verdict is about, and the zone around it that is too close to call */
  limit: number;
  band: Band;
  verdict: Verdict | "too-strong";
  /** surely less than the water company owes; only a gauge can tell */
  belowStatutory: boolean;
};

/** A problem with one of the numbers, in the unit in which it was typed. */
export type SupplyProblem = RangeProblem & { field: "volume" | "seconds" | "pressure" };

/** The first thing that cannot be right about a supply, or null. No water at all is a result, not a problem. */
export function checkSupply(reading: SupplyReading, limits: SupplyLimits): SupplyProblem | null {
  if (reading.by === "gauge") {
    const most = fromKilopascals(limits.highestKilopascals, reading.unit);
    const pressure = checkRange(reading.value, { min: 0, max: most });
    return pressure && { ...pressure, field: "pressure" };
  }
  const most = fromMillilitres(limits.largestMillilitres, reading.unit);
  const volume = checkRange(reading.volume, { min: 0, max: most });
  if (volume) return { ...volume, field: "volume" };
  const seconds = checkRange(reading.seconds, { min: limits.shortestSeconds, max: limits.longestSeconds });
  return seconds && { ...seconds, field: "seconds" };
}

/**
 * The supply and whether it is strong enough. Expects a reading that {@link checkSupply} finds no fault with; never
 * throws: with no time at all the verdict is 'unclear'.
 *
 * A pressure has two limits and is judged against the nearer one. A fill says nothing about too strong a supply.
 */
export function assessSupply(reading: SupplyReading, limits: SupplyLimits): SupplyAssessment {
  const { coverage } = limits;
  if (reading.by === "fill") {
    const { volume, unit, seconds } = reading;
    const limit = limits.leastPerMinute;
    const value = perMinute(toMillilitres(volume, unit), seconds, limits);
    // As with the dispenser: the errors that this fill would have on the limit.
    const band = guardBand(perMinute((limit * 1000 * seconds) / 60, seconds, limits), limit, coverage);
    const verdict = verdictOutside(value.value, band, "above");
    return { value, range: rangeOf(value, coverage), limit, band, verdict, belowStatutory: false };
  }
  const value = estimateOf(toKilopascals(reading.value, reading.unit), { evenly: [limits.gaugeError] });
  const { leastKilopascals: least, mostKilopascals: most } = limits;
  const strong = value.value > (least + most) / 2;
  const limit = strong ? most : least;
  const band = guardBand(value, limit, coverage);
  const range = rangeOf(value, coverage);
  const verdict = verdictOutside(value.value, band, strong ? "below" : "above");
  return {
    value,
    range,
    limit,
    band,
    verdict: strong && verdict === "fails" ? "too-strong" : verdict,
    belowStatutory: range.high < limits.statutoryKilopascals,
  };
}

/** The flow of one fill in l/min. */
function perMinute(millilitres: number, seconds: number, limits: SupplyLimits): Estimate {
  const volume = estimateOf(millilitres / 1000, {
    evenly: [limits.jugReading / 1000, (limits.jugScale * millilitres) / 1000],
  });
  return quotient(volume, { value: seconds / 60, u: limits.timing / 60 });
}
