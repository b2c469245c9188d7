/** Repeatable chance: each call gives the next number in [0, 1) of its seed. */
export type Chance = () => number;

/**
 * Chance of its own for each seed and place, so that a family of models can be made without those before it. The
 * finishing steps of MurmurHash3 over a counter.
 */
export function createChance(seed: number, place: number): Chance {
  let state = mix(mix(seed) ^ place);
  return () => {
    state = (state + 0x9e3779b9) | 0;
    return (mix(state) >>> 0) / 2 ** 32;
  };
}

/** A whole number of 32 bits of which each bit depends on every bit of the other. */
export function mix(number: number): number {
  let hash = Math.imul(number ^ (number >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return hash ^ (hash >>> 16);
}

/** One of a list or of the signs of a text. */
export function pick<T>(from: readonly T[] | string, chance: Chance): T {
  return from[Math.floor(chance() * from.length)] as T;
}
