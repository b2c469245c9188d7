import type { Instrument, Saying } from "../instrument.ts";
import { rangeText } from "../range.ts";
import { assessFilterLife, type FilterLifeAssessment } from "./assess.ts";
import { checkFilterUse, checkFittedWhen } from "./check.ts";
import { earliestDay, type FilterLifeLimits, filterLimits } from "./limits.ts";
import type { FilterAgeReading } from "./reading.ts";

export type FilterAgeNeed = { today: string; earliestYear: number; limits: FilterLifeLimits };
type Limits = { life: FilterLifeLimits; earliest: string };

/** How old a filter is, and how much ran through it. */
export const filterAge: Instrument<FilterAgeReading, Limits, FilterLifeAssessment, FilterAgeNeed> = {
  verdicts: ["passes", "fails", "unclear"],
  limits: (of) => ({ life: filterLimits(of), earliest: earliestDay(of) }),
  check: ({ fitted, use }, { life, earliest }, today) =>
    checkFittedWhen(fitted, today, { earliest }) ?? (use ? checkFilterUse(use, life) : null),
  assess: (reading, { life }, today) => assessFilterLife(reading, today, life),
  need: ({ of, today }) => ({ today, earliestYear: of("earliest-year"), limits: filterLimits(of) }),
  words(_, { months, litres }, saying) {
    const age = ageText(months, saying);
    if (!litres) return age;
    const { texts, number } = saying;
    const low = number(litres.low, 0);
    const used =
      litres.high === null
        ? texts("findings.litres-open", { low })
        : texts("findings.litres", { range: rangeText(texts, low, number(litres.high, 0)) });
    return `${age}. ${used}`;
  },
};

/** Whole months, rounded so that the true age lies between them. */
function ageText({ low, high }: FilterLifeAssessment["months"], { texts, number, verdict }: Saying): string {
  const least = number(Math.floor(low), 0);
  if (high === null) return texts("findings.filter-age-open", { low: least, verdict });
  const most = number(Math.ceil(high), 0);
  return texts(`findings.filter-age${least === most ? "-one" : ""}`, { low: least, high: most, verdict });
}
