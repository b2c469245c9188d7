/** An error's size and shape: standard uncertainty, and the half-widths of the even errors within it. */
type Shape = { u: number; evenly?: readonly number[] };

/**
 * Half the width of the range, symmetric about the estimate, that holds the true value with the probability
 * `coverage` (0 to 0.9999), in the unit of `u`. Never throws; what is not a number gives NaN.
 *
 * A jug whose marks are wrong by anything up to 5 % never errs by 6 %: a factor made for the normal distribution is
 * too wide there, and people would measure again for nothing. So the two widest even errors keep their shape and the
 * rest joins the normal one (their sum is close to normal by then). It is what JCGM 101:2008 draws by chance, without
 * drawing.
 */
export function halfWidthOf({ u, evenly = [] }: Shape, coverage: number): number {
  // As good as nothing, and too small to square.
  if (u < 1e-99) return 0;
  const widest = [...evenly].sort((a, b) => b - a).slice(0, 2);
  const rest = () =>
    Math.max(u * 1e-6, Math.sqrt(Math.max(0, u ** 2 - widest.reduce((sum, a) => sum + a ** 2 / 3, 0))));
  // One that is narrow beside the rest would be lost in rounding, and the sum looks normal without it.
  while ((widest.at(-1) ?? rest()) < rest() / 4) widest.pop();
  const normal = rest();
  // Newton's method from the middle outwards: the sum is the rarer the further out, so no step goes too far.
  let half = 0;
  for (let steps = 0; steps < 20; steps += 1) {
    const missing = (1 + coverage) / 2 - blur(half, normal, widest, [phi, phi1, phi2]);
    half += (missing * normal) / blur(half, normal, widest, [density, phi, phi1]);
    if (missing < 1e-7) break;
  }
  return half;
}

type Curve = (z: number) => number;

/**
 * A curve of the normal distribution at `x`, averaged over up to two even errors: an even one of half-width a takes
 * the difference of the curve's integral over ± a. Takes the curve, its integral and the integral of that.
 */
function blur(
  x: number,
  normal: number,
  [a, b]: readonly number[],
  [curve, once, twice]: readonly [Curve, Curve, Curve],
): number {
  const z = (shift: number) => (x + shift) / normal;
  if (a === undefined) return curve(z(0));
  if (b === undefined) return ((once(z(a)) - once(z(-a))) * normal) / (2 * a);
  const ends = twice(z(a + b)) - twice(z(a - b)) - twice(z(b - a)) + twice(z(-a - b));
  return (ends * normal ** 2) / (4 * a * b);
}

const density: Curve = (z) => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** The standard normal distribution: Abramowitz and Stegun 26.2.17, error below 7.5e-8. */
const phi: Curve = (z) => {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    density(z) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z < 0 ? tail : 1 - tail;
};

/** Its integral, and the integral of that. */
const phi1: Curve = (z) => z * phi(z) + density(z);
const phi2: Curve = (z) => ((z * z + 1) * phi(z) + z * density(z)) / 2;
