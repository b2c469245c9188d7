import { addDays, daysBetween } from "../../measuring/index.ts";
import { assessFilterAge, type FilterAgeAssessment, fittedBetween } from "./age.ts";
import { checkFilterUse } from "./check.ts";
import type { FilterLifeLimits } from "./limits.ts";
import type { FilterAgeReading } from "./reading.ts";

/** A range whose upper end nobody knows when it is null. */
type OpenRange = { low: number; high: number | null };

export type FilterLifeAssessment = FilterAgeAssessment & {
  /** drawn since it was fitted; null where nothing is known of the use */
  litres: OpenRange | null;
  /** the share of its life that is gone, by months or litres, whichever is more; 1 and above is due */
  used: OpenRange;
  /** which of the two comes first, counted from the day on which it was fitted */
  by: "months" | "litres" | "either";
};

/** Days in a mean month of the Gregorian calendar, and by how many days at most some months on end differ from it. */
const monthDays = 146_097 / 4800;
const monthSlack = 3;

const largest = (a: number | null, b: number | null) => (a === null || b === null ? null : Math.max(a, b));
const earlier = (a: string | null, b: string | null) => (a === null || b === null || a < b ? a : b);

/**
 * The life of a filter in months and in litres, whichever comes first: months stand for what grows in it and how it
 * ages, litres for what it takes up and what clogs it. Litres are the days since it was fitted times what the people
 * draw, as a range. It passes when it is surely due by neither, fails when it is surely due by one of them, and is
 * unclear otherwise. Without a use, or with one that {@link checkFilterUse} refuses, months alone count, as in
 * {@link assessFilterAge}. Never throws.
 */
export function assessFilterLife(
  reading: FilterAgeReading,
  today: string,
  limits: FilterLifeLimits,
): FilterLifeAssessment {
  const age = assessFilterAge(reading, today, limits.months);
  const share = { low: age.months.low / limits.months, high: over(age.months.high, limits.months) };
  const { use } = reading;
  const days = fittedBetween(reading.fitted, today);
  const isKnown = use && Object.hasOwn(limits.perPerson, use.habit) && !checkFilterUse(use, limits);
  const perPerson = isKnown && limits.perPerson[use.habit];
  if (!days || !perPerson) return { ...age, litres: null, used: share, by: "months" };
  const { first, last } = days;
  const capacity = use.capacity ?? limits.litres;
  const rate = { low: perPerson.low * use.people, high: perPerson.high * use.people };
  const litres = {
    low: daysBetween(last, today) * rate.low,
    high: first === null ? null : daysBetween(first, today) * rate.high,
  };
  const lasts = { low: Math.ceil(capacity / rate.high), high: Math.ceil(capacity / rate.low) };
  const dueOn = {
    earliest: earlier(age.dueOn.earliest, first && addDays(first, lasts.low)),
    latest: earlier(age.dueOn.latest, addDays(last, lasts.high)),
  };
  const { earliest, latest } = dueOn;
  const span = limits.months * monthDays;
  return {
    months: age.months,
    verdict: latest && today >= latest ? "fails" : earliest && today < earliest ? "passes" : "unclear",
    dueOn,
    litres,
    used: {
      low: Math.max(share.low, litres.low / capacity),
      high: largest(share.high, over(litres.high, capacity)),
    },
    by: lasts.high < span - monthSlack ? "litres" : lasts.low > span + monthSlack ? "months" : "either",
  };
}

function over(part: number | null, whole: number): number | null {
  return part === null ? null : part / whole;
}
