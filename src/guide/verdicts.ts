import type { Instrument, ReadingVerdict } from "./flow.ts";

/** What each instrument may say; a turn that takes its reading has to go on from each. */
export const verdictsOf: Record<Instrument, readonly ReadingVerdict[]> = {
  flow: ["passes", "fails", "unclear"],
  temperature: ["passes", "fails", "unclear"],
  "filter-age": ["passes", "fails", "unclear"],
  supply: ["passes", "fails", "unclear", "too-strong"],
  ice: ["passes", "fails", "unclear", "demand"],
  cubes: ["passes", "fails", "unclear"],
  seal: ["passes", "fails", "unclear", "corner", "in-the-way"],
};
