import type { Instrument } from "../instrument.ts";
import { assessSupply, type SupplyAssessment } from "./assess.ts";
import { checkSupply } from "./check.ts";
import { type SupplyLimits, supplyLimits } from "./limits.ts";
import type { SupplyReading } from "./reading.ts";
import { inUnitOf } from "./unit.ts";

/** How much the house gives. */
export const supply: Instrument<SupplyReading, SupplyLimits, SupplyAssessment, { limits: SupplyLimits }> = {
  verdicts: ["passes", "fails", "unclear", "too-strong"],
  // A verdict asks for nothing that the law of a region says.
  limits: (of) => supplyLimits(of),
  check: checkSupply,
  assess: assessSupply,
  need: ({ of, region }) => ({ limits: supplyLimits(of, region.statutes["supply-pressure"]) }),
  words(reading, { value, range }, { texts, number, half, verdict }) {
    const { shown, decimals, unit } = inUnitOf(reading);
    return texts("findings.supply", {
      value: number(shown(value.value), decimals),
      unit: unit(texts),
      error: half({ low: shown(range.low), high: shown(range.high) }, decimals),
      verdict,
    });
  },
};
