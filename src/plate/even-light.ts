import type { Grey } from "./grey.ts";

/**
 * How much of the strongest spread counts at least: where less varies there is no print, and only the camera's noise
 * would be made larger. Tuned on drawn photos (bench of plates).
 */
const calm = { share: 0.3, of: 0.95, least: 2 };

/** What becomes of the surroundings' mean, and of one spread: ground light grey, ink dark, as a reader of print expects. */
const [ground, step] = [205, 62];

/**
 * Takes out shadow, glare and dim light: each shade is held against the mean and the spread of its surroundings (local
 * normalisation, as for the threshold in Niblack, "An Introduction to Digital Image Processing", 1986), so that ink is
 * equally dark everywhere. Light print on a dark plate comes out dark on light: ink is what there is less of.
 * @param reach half the side of the surroundings, in pixels: about two lines of print
 */
export function evenLight(picture: Grey, reach: number): Grey {
  const { width, height, data } = picture;
  const { means, spreads } = surroundingsOf(picture, reach);
  const least = Math.max(calm.least, calm.share * quantile(spreads, calm.of));
  let skew = 0;
  for (let at = 0; at < data.length; at++) {
    if ((spreads[at] ?? 0) < least) continue;
    skew += (((data[at] ?? 0) - (means[at] ?? 0)) / (spreads[at] ?? 1)) ** 3;
  }
  const sign = skew > 0 ? -1 : 1;
  const even = new Uint8Array(data.length);
  for (let at = 0; at < data.length; at++) {
    const away = ((data[at] ?? 0) - (means[at] ?? 0)) / Math.max(least, spreads[at] ?? 0);
    even[at] = Math.min(255, Math.max(0, ground + sign * step * away));
  }
  return { width, height, data: even };
}

/** Each shade as the middle one of the nine around it: takes out specks and noise, and leaves edges. */
export function despeckle({ width, height, data }: Grey): Grey {
  const clean = data.slice();
  const nine = new Uint8Array(9);
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      let place = 0;
      for (let row = y - 1; row <= y + 1; row++)
        for (let column = x - 1; column <= x + 1; column++) nine[place++] = data[row * width + column] ?? 0;
      clean[y * width + x] = nine.sort()[4] ?? 0;
    }
  return { width, height, data: clean };
}

/** Mean and spread of the square around each pixel, from sums over all above and to the left. */
function surroundingsOf(
  { width, height, data }: Grey,
  reach: number,
): { means: Float32Array; spreads: Float32Array } {
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
  const [means, spreads] = [new Float32Array(data.length), new Float32Array(data.length)];
  for (let y = 0; y < height; y++) {
    const top = Math.max(0, y - reach) * wide;
    const bottom = Math.min(height, y + reach + 1) * wide;
    for (let x = 0; x < width; x++) {
      const [left, right] = [Math.max(0, x - reach), Math.min(width, x + reach + 1)];
      const count = ((bottom - top) / wide) * (right - left);
      const corners = [bottom + right, bottom + left, top + right, top + left] as const;
      const mean = sumIn(sums, corners) / count;
      means[y * width + x] = mean;
      spreads[y * width + x] = Math.sqrt(Math.max(0, sumIn(squares, corners) / count - mean * mean));
    }
  }
  return { means, spreads };
}

function sumIn(table: Float64Array, [a, b, c, d]: readonly [number, number, number, number]): number {
  return (table[a] ?? 0) - (table[b] ?? 0) - (table[c] ?? 0) + (table[d] ?? 0);
}

/** The number that so large a share of the others is below; looked for in every seventh. */
function quantile(numbers: Float32Array, share: number): number {
  const some = numbers.filter((_, at) => at % 7 === 0).sort();
  return some[Math.floor(share * (some.length - 1))] ?? 0;
}
