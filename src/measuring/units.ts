/** How a householder may state water from the dispenser. Grams are read off kitchen scales. */
export const jugUnits = ["ml", "us-fl-oz", "us-cup", "g"] as const;
export type JugUnit = (typeof jugUnits)[number];

/** How a householder may state any amount of water, a bucket's or a tank's as well. */
export const volumeUnits = [...jugUnits, "l", "us-qt", "us-gal", "uk-pint"] as const;
export type VolumeUnit = (typeof volumeUnits)[number];

/** How a gauge may show a pressure. */
export const pressureUnits = ["kPa", "bar", "psi"] as const;
export type PressureUnit = (typeof pressureUnits)[number];

/** How a householder may state a mass of ice. */
export const massUnits = ["g", "kg", "oz", "lb"] as const;
export type MassUnit = (typeof massUnits)[number];

/** How a householder may state a temperature. */
export const temperatureUnits = ["C", "F"] as const;
export type TemperatureUnit = (typeof temperatureUnits)[number];

/**
 * Millilitres in one of each unit: NIST SP 811 (2008) App. B.8. A US quart is a quarter of a gallon, and a UK pint is
 * 568.261 25 ml (Weights and Measures Act 1985, schedule 1, part IV). A gram of cold water is taken as one millilitre
 * (common practice, no source); at 20 °C it is 0.2 % more, far below what kitchen scales can tell.
 */
const millilitresIn: Record<VolumeUnit, number> = {
  ml: 1,
  "us-fl-oz": 29.57353,
  "us-cup": 236.5882,
  g: 1,
  l: 1000,
  "us-qt": 946.353,
  "us-gal": 3785.412,
  "uk-pint": 568.26125,
};

/** Kilopascals in one of each unit: NIST SP 811 (2008) App. B.8. */
const kilopascalsIn: Record<PressureUnit, number> = { kPa: 1, bar: 100, psi: 6.894757 };

/** Grams in one of each unit: NIST SP 811 (2008) App. B.8 for the pound, and 16 ounces to the pound. */
const gramsIn: Record<MassUnit, number> = { g: 1, kg: 1000, oz: 453.59237 / 16, lb: 453.59237 };

/** An amount of water in millilitres. `toMillilitres(1, "us-cup")` is 236.5882. */
export function toMillilitres(value: number, unit: VolumeUnit): number {
  return value * millilitresIn[unit];
}

/** Millilitres of water in another unit; the inverse of {@link toMillilitres}. */
export function fromMillilitres(millilitres: number, unit: VolumeUnit): number {
  return millilitres / millilitresIn[unit];
}

/** A pressure in kPa. `toKilopascals(25, "psi")` is about 172. */
export function toKilopascals(value: number, unit: PressureUnit): number {
  return value * kilopascalsIn[unit];
}

/** Kilopascals in another unit; the inverse of {@link toKilopascals}. */
export function fromKilopascals(kilopascals: number, unit: PressureUnit): number {
  return kilopascals / kilopascalsIn[unit];
}

/** A mass in grams. `toGrams(1, "lb")` is 453.59237. */
export function toGrams(value: number, unit: MassUnit): number {
  return value * gramsIn[unit];
}

/** Grams in another unit; the inverse of {@link toGrams}. */
export function fromGrams(grams: number, unit: MassUnit): number {
  return grams / gramsIn[unit];
}

/** A temperature in °C: (°F − 32) / 1.8, NIST SP 811 App. B.8. `toCelsius(0, "F")` is about −17.8. */
export function toCelsius(value: number, unit: TemperatureUnit): number {
  return unit === "F" ? (value - 32) / 1.8 : value;
}

/** A temperature in °C, in another unit; the inverse of {@link toCelsius}. */
export function fromCelsius(celsius: number, unit: TemperatureUnit): number {
  return unit === "F" ? celsius * 1.8 + 32 : celsius;
}
