import type { SealLimits } from "./limits.ts";
import type { SealReading } from "./reading.ts";

/** What the spots that slip look like together. */
export type SealPattern = "sound" | "worn" | "corner" | "in-the-way" | "unclear";

export type SealAssessment = {
  pattern: SealPattern;
  verdict: "passes" | "fails" | "corner" | "in-the-way" | "unclear";
  /** how many spots slip, and which, 0 to 11 */
  slips: number;
  at: number[];
  /** how many spots hold the strip only weakly */
  weak: number;
};

/** As the survey is made: twelve spots, every third of them a corner. */
const spotCount = 12;
const cornerEvery = 3;

/**
 * Whether the seal holds, from where the paper slips: nowhere is sound; a few spots on end with a corner among them
 * mean a door out of line there; a few on end within a side mean a packet, a fold or dirt in the way; anything else a
 * worn seal (common practice, no source). A spot that drags still holds.
 *
 * Spots that were not tried are taken once as holding and once as slipping: where the two disagree it is unclear.
 * Fewer than twelve entries count as not tried, and so does what is no answer; more are left out. Never throws.
 */
export function assessSeal({ spots }: SealReading, limits: SealLimits): SealAssessment {
  const all = Array.from({ length: spotCount }, (_, spot) => spots[spot]);
  const atWorst = all.map((how) => how !== "grips" && how !== "drags");
  const slipping = all.map((how) => how === "slips");
  const found = patternOf(slipping, limits);
  const pattern = found === patternOf(atWorst, limits) ? found : "unclear";
  const at = slipping.flatMap((slips, spot) => (slips ? [spot] : []));
  return {
    pattern,
    verdict: pattern === "sound" ? "passes" : pattern === "worn" ? "fails" : pattern,
    slips: at.length,
    at,
    weak: all.filter((how) => how === "drags").length,
  };
}

function patternOf(slipping: readonly boolean[], { longestArc }: SealLimits): SealPattern {
  const slips = slipping.filter(Boolean).length;
  if (!slips) return "sound";
  // Round the edge, an arc begins wherever a spot slips and the one before it holds.
  const arcs = slipping.filter((slip, spot) => slip && !slipping.at(spot - 1)).length;
  if (arcs !== 1 || slips > longestArc) return "worn";
  return slipping.some((slip, spot) => slip && spot % cornerEvery === 0) ? "corner" : "in-the-way";
}
