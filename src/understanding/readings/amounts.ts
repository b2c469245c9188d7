import {
  fromGrams,
  fromMillilitres,
  type MassUnit,
  massUnits,
  toGrams,
  toMillilitres,
  type VolumeUnit,
  volumeUnits,
} from "../../measuring/index.ts";
import type { Item } from "./items.ts";

/** A number and what it counts; `unit` is null where nothing says. */
export type Amount = { value: number; typed: string; unit: string | null };

/** Every number with the unit after it. 'A' and 'one' count only where a unit follows: 'an hour', but not 'a jug'. */
export function amountsOf(items: readonly Item[]): Amount[] {
  return items.flatMap((item, at) => {
    if (item.kind !== "number") return [];
    let next = items[at + 1];
    // 'half an hour'
    if (item.value === 0.5 && next?.kind === "number" && next.value === 1) next = items[at + 2];
    if (next?.kind === "unit" && next.unit === "degrees" && items[at + 2]?.kind === "unit")
      next = items[at + 2];
    const unit = next?.kind === "unit" ? next.unit : null;
    const before = items[at - 1];
    const isTail = before?.kind === "number" && before.value === 0.5 && item.value === 1;
    if (isTail || (unit === null && item.value === 1 && item.typed === "1")) return [];
    return [{ value: item.value, typed: item.typed, unit }];
  });
}

/** A unit as one of those that are offered, with the number in it; what was typed stays where it need not change. */
export function offered(
  { value, typed, unit }: Amount,
  kind: "volume" | "mass",
  units: readonly string[],
): { typed: string; unit: string } | null {
  const usual = units[0] ?? "";
  if (unit === null) return { typed, unit: usual };
  if (units.includes(unit)) return { typed, unit };
  if (kind === "volume" && isOneOf(volumeUnits, unit))
    return { typed: short(fromMillilitres(toMillilitres(value, unit), usual as VolumeUnit)), unit: usual };
  if (kind === "mass" && isOneOf(massUnits, unit))
    return { typed: short(fromGrams(toGrams(value, unit), usual as MassUnit)), unit: usual };
  return null;
}

const secondsIn: Record<string, number> = { second: 1, minute: 60, hour: 3600, day: 86_400, week: 604_800 };

/** The first length of time that is said, in seconds. */
export function timeOf(amounts: readonly Amount[]): number | null {
  const [time] = amounts.filter(({ unit }) => unit !== null && Object.hasOwn(secondsIn, unit));
  return time ? time.value * (secondsIn[time.unit ?? ""] ?? 0) : null;
}

/** A number as it is typed, with three digits after the point at most. */
export const short = (value: number) => `${Math.round(value * 1000) / 1000}`;

const isOneOf = <Unit extends string>(units: readonly Unit[], unit: string): unit is Unit =>
  (units as readonly string[]).includes(unit);
