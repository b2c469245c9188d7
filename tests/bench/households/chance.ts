/**
 * A number in [0, 1) that depends on nothing but its seed and names: the same home meets the same luck under every
 * policy, in whatever order it is asked. FNV-1a over the names, finished as in MurmurHash3 (both from memory).
 */
export function luck(seed: number, ...names: (string | number)[]): number {
  let hash = 0x811c9dc5 ^ seed;
  for (const name of names) {
    const text = `${name}/`;
    for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  }
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return ((hash ^ (hash >>> 16)) >>> 0) / 2 ** 32;
}

/** A factor between 1/3 and 3, evenly spread on a logarithmic scale. */
export function disturbance(seed: number, ...names: (string | number)[]): number {
  return 3 ** (2 * luck(seed, ...names) - 1);
}

/** The place at which a number in [0, 1) falls among weights. */
export function pick(weights: ArrayLike<number>, at: number): number {
  let total = 0;
  for (let place = 0; place < weights.length; place++) total += weights[place] as number;
  let left = at * total;
  for (let place = 0; place < weights.length; place++) {
    left -= weights[place] as number;
    if (left < 0) return place;
  }
  return weights.length - 1;
}
