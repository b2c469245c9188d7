import type { Band } from "./estimate.ts";

/** A threshold of flows/. `confidence` and `source` stay at the workbench: a phone gets value and unit only. */
export type Limit = { value: number; unit: string; confidence?: string; source?: string };

/** The limits by id. */
export type Limits = Record<string, Limit>;

/** Asks for a limit by its id. */
export type LimitOf = (id: string) => number;

/** @throws Error for a limit that flows/limits.yaml does not have: a fault of ours, found by any test. */
export function limitOf(limits: Limits, id: string): number {
  const value = limits[id]?.value;
  if (value === undefined) throw new Error(`There is no limit "${id}"`);
  return value;
}

/** Asks a set of limits; as {@link limitOf} throws for one that is not there. */
export const askLimits =
  (limits: Limits): LimitOf =>
  (id) =>
    limitOf(limits, id);

/** Two limits as the ends of a range. */
export function bandOf(of: LimitOf, low: string, high: string): Band {
  return { low: of(low), high: of(high) };
}
