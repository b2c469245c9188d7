import type { Instrument } from "../instrument.ts";
import { assessSeal, type SealAssessment } from "./assess.ts";
import { type SealLimits, sealLimits } from "./limits.ts";
import type { SealReading } from "./reading.ts";

/** The survey before, with its verdict, where this one comes after something was put right. */
export type SealNeed = {
  limits: SealLimits;
  before: { reading: SealReading; verdict: SealAssessment["verdict"] } | null;
};

/** A strip of paper around a shut door. */
export const seal: Instrument<SealReading, SealLimits, SealAssessment, SealNeed> = {
  verdicts: ["passes", "fails", "unclear", "corner", "in-the-way"],
  limits: sealLimits,
  // What its shape lets through can be right: what is missing was not tried.
  check: () => null,
  assess: assessSeal,
  need: ({ of, earlier }) => ({ limits: sealLimits(of), before: earlier("seal") as SealNeed["before"] }),
  words: ({ spots }, { slips }, { texts, verdict }) =>
    texts("findings.seal", { count: slips, spots: spots.filter(Boolean).length, verdict }),
};
