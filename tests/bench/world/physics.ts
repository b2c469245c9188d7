/* Formulas alone, each with where it comes from; what a machine makes of them is in water.ts and cold.ts. */

/** Latent heat of ice J/kg and its density kg/m³ (Mechanical Engineers' Handbook vol. 4, table 17); k at 0 °C (FAO T0713E). */
export const ice = { latent: 333_500, density: 917, conductivity: 2.22 };

/** Plank's shape factors P and R. */
export const shapes = {
  sphere: [1 / 6, 1 / 24],
  cylinder: [1 / 4, 1 / 16],
  slab: [1 / 2, 1 / 8],
} as const;

/**
 * Seconds until a body is frozen through, by Plank: t = ρL/(Tf−Ta)·(P·a/h + R·a²/k). It leaves sensible heat out, so
 * only ratios at one h are used here.
 * @param size m, diameter or full thickness; @param airC °C, below `freezesAt`; @param h W/m²K at its surface
 */
export function freezingSeconds(
  shape: keyof typeof shapes,
  size: number,
  airC: number,
  h: number,
  { latent = ice.latent, density = ice.density, conductivity = ice.conductivity, freezesAt = 0 } = {},
): number {
  const [p, r] = shapes[shape];
  if (airC >= freezesAt) return Number.POSITIVE_INFINITY;
  return ((density * latent) / (freezesAt - airC)) * ((p * size) / h + (r * size * size) / conductivity);
}

/**
 * Flow through a drag that grows with the square (pipes, valves) and one that grows with it (porous carbon, Darcy),
 * one after the other: p = square·Q² + line·Q.
 * @param kPa over both; @param square kPa/(ml/s)²; @param line kPa/(ml/s)
 * @returns ml/s
 */
export function flowThrough(kPa: number, square: number, line: number): number {
  if (kPa <= 0 || !Number.isFinite(square) || !Number.isFinite(line)) return 0;
  if (square === 0) return line === 0 ? Number.POSITIVE_INFINITY : kPa / line;
  return (-line + Math.sqrt(line * line + 4 * square * kPa)) / (2 * square);
}

/** kPa of a head of water in metres, conventional 9.80665 kPa/m, and of pounds per square inch. */
export const kPaOfHead = (metres: number) => metres * 9.80665;
export const kPaOfPsi = (psi: number) => psi * 6.894757;

/** What is left after `hours` of a gap that closes with time constant `tau`. */
export const approach = (from: number, to: number, hours: number, tau: number) =>
  to + (from - to) * Math.exp(-hours / tau);
