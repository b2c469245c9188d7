import { fromKilopascals } from "../../measuring/index.ts";
import type { Instrument } from "../instrument.ts";
import { assessSupply, type SupplyAssessment } from "./assess.ts";
import { checkSupply } from "./check.ts";
import { type SupplyLimits, supplyLimits } from "./limits.ts";
import type { SupplyReading } from "./reading.ts";

/** How much the house gives. */
export const supply: Instrument<SupplyReading, SupplyLimits, SupplyAssessment, { limits: SupplyLimits }> = {
  verdicts: ["passes", "fails", "unclear", "too-strong"],
  // A verdict asks for nothing that the law of a region says.
  limits: (of) => supplyLimits(of),
  check: checkSupply,
  assess: assessSupply,
  need: ({ of, region }) => ({ limits: supplyLimits(of, region.statutes["supply-pressure"]) }),
  words(reading, { value, range }, { texts, number, half, verdict }) {
    if (reading.by === "fill")
      return texts("findings.supply", { value: number(value.value, 1), error: half(range), verdict });
    const shown = (kilopascals: number) => fromKilopascals(kilopascals, reading.unit);
    return texts("findings.gauge", {
      value: number(reading.value, 1),
      unit: texts(`measure.unit-${reading.unit}`),
      error: half({ low: shown(range.low), high: shown(range.high) }),
      verdict,
    });
  },
};
