import type { Estimate } from "../../measuring/index.ts";
import type { Instrument } from "../instrument.ts";
import { rangeText } from "../range.ts";
import { assessIce, type IceAssessment } from "./assess.ts";
import { checkIce } from "./check.ts";
import { type IceLimits, iceLimits } from "./limits.ts";
import type { IceReading } from "./reading.ts";
import { inUnitOf } from "./unit.ts";

/** Temperature and flow as they were measured before in this session, and since when the ice was waited for (RFC 3339). */
export type IceNeed = {
  limits: IceLimits;
  celsius: Estimate | null;
  perSecond: Estimate | null;
  since: string | null;
};

/** A day's ice, from how much came in some hours. */
export const ice: Instrument<IceReading, IceLimits, IceAssessment, IceNeed> = {
  verdicts: ["passes", "fails", "unclear", "demand"],
  limits: iceLimits,
  check: checkIce,
  assess: assessIce,
  need: ({ of, since, earlier }) => ({
    limits: iceLimits(of),
    since,
    celsius: earlier("temperature")?.estimate ?? null,
    perSecond: earlier("flow")?.estimate ?? null,
  }),
  words(reading, { range: { low, high } }, { texts, number, verdict }, limits) {
    const { unit, shown, decimals } = inUnitOf(reading, limits);
    return texts("findings.ice", {
      range: rangeText(texts, number(shown(low), decimals), number(shown(high), decimals)),
      unit: texts(`measure.unit-${unit}`),
      verdict,
    });
  },
};
