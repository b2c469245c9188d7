import type { Instrument } from "../instrument.ts";
import { assessSeal, type SealAssessment } from "./assess.ts";
import { type SealLimits, sealLimits } from "./limits.ts";
import type { SealReading } from "./reading.ts";

/** A strip of paper around a shut door. */
export const seal: Instrument<SealReading, SealLimits, SealAssessment, { limits: SealLimits }> = {
  verdicts: ["passes", "fails", "unclear", "corner", "in-the-way"],
  limits: sealLimits,
  // What its shape lets through can be right: what is missing was not tried.
  check: () => null,
  assess: assessSeal,
  need: ({ of }) => ({ limits: sealLimits(of) }),
  words: ({ spots }, { slips }, { texts, verdict }) =>
    texts("findings.seal", { count: slips, spots: spots.filter(Boolean).length, verdict }),
};
