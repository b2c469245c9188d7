import {
  type Band,
  type Estimate,
  estimateOf,
  guardBand,
  quotient,
  rangeOf,
  toKilopascals,
  toMillilitres,
  type Verdict,
  verdictOutside,
} from "../../measuring/index.ts";
import type { SupplyLimits } from "./limits.ts";
import type { SupplyReading } from "./reading.ts";

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

/**
 * The supply and whether it is strong enough. Expects a reading that {@link checkSupply} finds no fault with; never
 * throws: with no time at all the verdict is 'unclear'.
 *
 * A pressure has two limits and is judged against the nearer one. A fill says nothing about too strong a supply, nor
 * anything at all between weak and plenty: there lie the taps of most sound kitchens.
 */
export function assessSupply(reading: SupplyReading, limits: SupplyLimits): SupplyAssessment {
  const { coverage } = limits;
  if (reading.by === "fill") {
    const { volume, unit, seconds } = reading;
    const limit = limits.leastPerMinute;
    const value = perMinute(toMillilitres(volume, unit), seconds, limits);
    // As with the dispenser: the errors that this fill would have on the limit.
    const bandAt = (least: number) =>
      guardBand(perMinute((least * 1000 * seconds) / 60, seconds, limits), least, coverage);
    const band = { low: bandAt(limit).low, high: bandAt(limits.plentyPerMinute).high };
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
