/**
 * The value that a share stays below with this chance, where the share is distributed as Beta(a, b).
 * @param chance 0 to 1
 */
export function betaQuantile(chance: number, a: number, b: number): number {
  let [low, high] = [0, 1];
  // Halved until no double lies between.
  for (let step = 0; step < 200 && high - low > Number.EPSILON * high; step++) {
    const middle = (low + high) / 2;
    if (betaBelow(middle, a, b) < chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The regularised incomplete beta function (DLMF 8.17): the chance that a share of Beta(a, b) is below x. */
export function betaBelow(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The fraction converges fast on this side only.
  if (x > (a + 1) / (a + b + 2)) return 1 - betaBelow(1 - x, b, a);
  const front = Math.exp(
    a * Math.log(x) + b * Math.log1p(-x) + logGamma(a + b) - logGamma(a) - logGamma(b) - Math.log(a),
  );
  return front * fraction(x, a, b);
}

/** The continued fraction of DLMF 8.17.22, by Lentz's way. */
function fraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const apart = (value: number) => (Math.abs(value) < tiny ? tiny : value);
  let [c, d] = [1, 1 / apart(1 - ((a + b) * x) / (a + 1))];
  let sum = d;
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let step = 1;
    for (const term of [even, odd]) {
      d = 1 / apart(1 + term * d);
      c = apart(1 + term / c);
      step = d * c;
      sum *= step;
    }
    if (Math.abs(step - 1) < 1e-15) break;
  }
  return sum;
}

/** The logarithm of the gamma function by Stirling's series (DLMF 5.11.1), for arguments above 0. */
function logGamma(z: number): number {
  if (z < 12) return logGamma(z + 1) - Math.log(z);
  const series = 1 / (12 * z) - 1 / (360 * z ** 3) + 1 / (1260 * z ** 5) - 1 / (1680 * z ** 7);
  return (z - 0.5) * Math.log(z) - z + Math.log(2 * Math.PI) / 2 + series;
}
