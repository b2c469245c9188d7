import type { Grey } from "./grey.ts";

/**
 * Takes out shadow, glare and dim light: each shade is held against the mean and the spread of its surroundings
 * (local normalisation as in Niblack's threshold, "An Introduction to Digital Image Processing", 1986, before any
 * threshold), so that ink has the same darkness everywhere. Where nothing is printed it stays calm.
 * @param reach half the side of the surroundings, in pixels: about two lines of print
 */
export function evenLight({ width, height, data }: Grey, reach: number): Grey {
  const { sums, squares } = integrals({ width, height, data });
  const wide = width + 1;
  const even = new Uint8Array(data.length);
  for (let y = 0; y < height; y++) {
    const top = Math.max(0, y - reach) * wide;
    const bottom = Math.min(height, y + reach + 1) * wide;
    for (let x = 0; x < width; x++) {
      const left = Math.max(0, x - reach);
      const right = Math.min(width, x + reach + 1);
      const count = ((bottom - top) / wide) * (right - left);
      const within = (table: Float64Array) =>
        ((table[bottom + right] ?? 0) -
          (table[bottom + left] ?? 0) -
          (table[top + right] ?? 0) +
          (table[top + left] ?? 0)) /
        count;
      const mean = within(sums);
      const spread = Math.sqrt(Math.max(0, within(squares) - mean * mean));
      const shade = ((data[y * width + x] ?? 0) - mean) / Math.max(spread, leastSpread);
      even[y * width + x] = Math.min(255, Math.max(0, 160 + 64 * shade));
    }
  }
  return { width, height, data: even };
}

/** Shades; below it what varies is the camera's noise (judgement). */
const leastSpread = 6;

/** Sums of all shades, and of their squares, above and to the left of each corner. */
function integrals({ width, height, data }: Grey): { sums: Float64Array; squares: Float64Array } {
  const wide = width + 1;
  const sums = new Float64Array(wide * (height + 1));
  const squares = new Float64Array(wide * (height + 1));
  for (let y = 0; y < height; y++) {
    let [sum, square] = [0, 0];
    for (let x = 0; x < width; x++) {
      const shade = data[y * width + x] ?? 0;
      sum += shade;
      square += shade * shade;
      const at = (y + 1) * wide + x + 1;
      sums[at] = (sums[at - wide] ?? 0) + sum;
      squares[at] = (squares[at - wide] ?? 0) + square;
    }
  }
  return { sums, squares };
}
