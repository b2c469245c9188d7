/** How a householder may state an amount of water. Grams are read off kitchen scales. */
export type VolumeUnit = "ml" | "us-fl-oz" | "us-cup" | "g";

/** How a householder may state a temperature. */
export type TemperatureUnit = "C" | "F";

/**
 * Millilitres in one of each unit: NIST SP 811 (2008) App. B.8. A gram of cold water is taken as one
 * millilitre (from memory, no source); at 20 °C it is 0.2 % more, far below what kitchen scales can tell.
 */
const millilitresIn: Record<VolumeUnit, number> = { ml: 1, "us-fl-oz": 29.57353, "us-cup": 236.5882, g: 1 };

/** An amount of water in millilitres. `toMillilitres(1, "us-cup")` is 236.5882. */
export function toMillilitres(value: number, unit: VolumeUnit): number {
  return value * millilitresIn[unit];
}

/** Millilitres of water in another unit; the inverse of {@link toMillilitres}. */
export function fromMillilitres(millilitres: number, unit: VolumeUnit): number {
  return millilitres / millilitresIn[unit];
}

/** A temperature in °C: (°F − 32) / 1.8, NIST SP 811 App. B.8. `toCelsius(0, "F")` is about −17.8. */
export function toCelsius(value: number, unit: TemperatureUnit): number {
  return unit === "F" ? (value - 32) / 1.8 : value;
}

/** A temperature in °C, in another unit; the inverse of {@link toCelsius}. */
export function fromCelsius(celsius: number, unit: TemperatureUnit): number {
  return unit === "F" ? celsius * 1.8 + 32 : celsius;
}

/** A difference of temperatures in kelvin: it scales, but has no offset. `temperatureDifference(9, "F")` is 5. */
export function temperatureDifference(value: number, unit: TemperatureUnit): number {
  return unit === "F" ? value / 1.8 : value;
}
