/** Errors drawn by chance, the same ones for the same seed. */
export type Draws = {
  /** anywhere within ± `halfWidth` alike */
  even(halfWidth: number): number;
  /** of a normal distribution with this standard deviation */
  normal(u: number): number;
};

export function createDraws(seed: number): Draws {
  let state = seed; // mulberry32, a public-domain generator
  const random = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    even: (halfWidth) => (2 * random() - 1) * halfWidth,
    // Box and Muller; 1 − random() is never 0.
    normal: (u) => u * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()),
  };
}

/** The share of `trials` trials in which something happens. */
export function shareOf(trials: number, happens: () => boolean): number {
  let count = 0;
  for (let trial = 0; trial < trials; trial += 1) if (happens()) count += 1;
  return count / trials;
}
