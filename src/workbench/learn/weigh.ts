import type { Search } from "./searches.ts";
import type { ErrorId, Rates, Stratum } from "./strata.ts";

/** What a pass over all searches comes to, at some shares and rates of error. */
export type Weighed = {
  /** By cause: in how many searches it was what was wrong, how many were to be expected of one share, what
   * is unsure of it; of the searches whose checks are known (`told`), in how many it was put right and that helped. */
  causes: Map<
    string,
    { found: number; expected: number; judged: number; unsure: number; mended: number; told: number }
  >;
  /** By error: how many reports there were, how many of them were wrong, what is unsure of that. */
  errors: Map<ErrorId, { reports: number; wrong: number; unsure: number }>;
};

/** A likelihood is no less: what flows/ thinks impossible happens (the end of the grid of a phone's tables). */
const least = 0.002;

/**
 * Weighs every search by what it says: how likely each cause is after all that was seen, and each report to be wrong.
 * @param times by cause, how many times its judged share it has
 * @param doubt `vain`: P(putting a cause right changes nothing | it was what was wrong). `untrue`: how often people say that it
 *   works where something else was wrong, beside where it was this; `mended`: how often a cause, where it is what was wrong, is
 *   put right by the end, as far as that is known
 */
export function weigh(
  strata: readonly Stratum[],
  times: ReadonlyMap<string, number>,
  rates: Rates,
  doubt: Doubt,
): Weighed {
  const weighed: Weighed = { causes: new Map(), errors: new Map() };
  for (const stratum of strata) weighStratum(weighed, stratum, times, rates, doubt);
  return weighed;
}

type Doubt = { vain: number; untrue: number; mended: ReadonlyMap<string, number> };

function weighStratum(
  { causes: byCause, errors }: Weighed,
  { causes, base, isFixed, searches, tables }: Stratum,
  times: ReadonlyMap<string, number>,
  rates: Rates,
  doubt: Doubt,
): void {
  const free = base.reduce((sum, one, at) => sum + (isFixed[at] ? 0 : one), 0);
  const scaled = base.map((one, at) => (isFixed[at] ? 0 : one * (times.get(causes[at] ?? "") ?? 1)));
  const sum = scaled.reduce((all, one) => all + one, 0) / free;
  const prior = base.map((one, at) => (isFixed[at] ? one : (scaled[at] ?? 0) / sum));
  const reports = new Map(
    [...tables].map(([check, { error, at }]) => [check, { error, ...at(error ? (rates[error] ?? 0) : 0) }]),
  );
  const tally = causes.map(() => ({ found: 0, unsure: 0, mended: 0, told: 0 }));
  let all = 0;
  for (const { count, search, cause } of searches) {
    all += count;
    if (!search) {
      const of = tally[cause];
      if (of) of.found += count;
      continue;
    }
    const chances = chancesOf(search, prior);
    for (const [at, chance] of chances.entries()) {
      const of = tally[at];
      if (!of) continue;
      of.found += count * chance;
      of.unsure += count * chance * (1 - chance);
      of.told += count * chance;
      if (search.fixed === causes[at]) of.mended += count * chance;
    }
    for (const { check, outcome } of search.seen) {
      const of = reports.get(check);
      if (!of?.error) continue;
      const wrong = chances.reduce((one, chance, at) => {
        const likely = Math.max(least, of.chance[outcome]?.[at] ?? 0);
        return one + (chance * (of.slip[outcome]?.[at] ?? 0)) / likely;
      }, 0);
      const error = errors.get(of.error) ?? { reports: 0, wrong: 0, unsure: 0 };
      error.reports += count;
      error.wrong += count * wrong;
      error.unsure += count * wrong * (1 - wrong);
      errors.set(of.error, error);
    }
  }
  for (const [at, id] of causes.entries()) {
    if (isFixed[at]) continue;
    const one = byCause.get(id) ?? { found: 0, expected: 0, judged: 0, unsure: 0, mended: 0, told: 0 };
    one.found += tally[at]?.found ?? 0;
    one.unsure += tally[at]?.unsure ?? 0;
    one.mended += tally[at]?.mended ?? 0;
    one.told += tally[at]?.told ?? 0;
    one.judged += all * (base[at] ?? 0);
    one.expected += all * (prior[at] ?? 0);
    byCause.set(id, one);
  }

  function chancesOf({ seen, fixed, vain }: Search, from: readonly number[]): number[] {
    const weights = from.map((chance, at) => {
      const id = causes[at] ?? "";
      let weight = chance;
      for (const { check, outcome } of seen)
        weight *= Math.max(least, reports.get(check)?.chance[outcome]?.[at] ?? 0);
      // Who could have put it right, and has not, has something else more likely than not.
      if (!fixed || !causes.includes(fixed)) weight *= 1 - (doubt.mended.get(id) ?? 0);
      else if (id !== fixed) weight *= doubt.untrue;
      if (vain.includes(id)) weight *= doubt.vain;
      return weight;
    });
    const total = weights.reduce((sum, one) => sum + one, 0);
    return total > 0 ? weights.map((one) => one / total) : [...from];
  }
}
