import type { Search } from "./searches.ts";
import type { ErrorId, Rates, Stratum } from "./strata.ts";

/** What a pass over all searches comes to, at some shares and rates of error. */
export type Weighed = {
  /** By cause: in how many searches it was what was wrong, how many were to be expected of one share, what is unsure of it. */
  causes: Map<string, { found: number; expected: number; judged: number; unsure: number }>;
  /** By error: how many reports there were, how many of them were wrong, what is unsure of that. */
  errors: Map<ErrorId, { reports: number; wrong: number; unsure: number }>;
};

/** A likelihood is no less: what flows/ thinks impossible happens (the end of the grid of a phone's tables). */
const least = 0.002;

/**
 * What a check showed counts for so much of a whole answer: answers of one home hang together more than flows/ has it, and
 * what flows/ says of a machine is judgement (tried on the training homes of a world, see demo/docs/figures.md).
 */
const told = 0.5;

/**
 * Weighs every search by what it says: how likely each cause is after all that was seen, and each report to be wrong.
 * @param times by cause, how many times its judged share it has
 * @param doubt `vain`: P(putting a cause right changes nothing | it was what was wrong). `untrue`: how often people say that it
 *   works where something else was wrong, beside where it was this
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

type Doubt = { vain: number; untrue: number };

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
  const tally = causes.map(() => ({ found: 0, unsure: 0 }));
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
    const one = byCause.get(id) ?? { found: 0, expected: 0, judged: 0, unsure: 0 };
    one.found += tally[at]?.found ?? 0;
    one.unsure += tally[at]?.unsure ?? 0;
    one.judged += all * (base[at] ?? 0);
    one.expected += all * (prior[at] ?? 0);
    byCause.set(id, one);
  }

  function chancesOf({ seen, fixed, vain }: Search, from: readonly number[]): number[] {
    const weights = from.map((chance, at) => {
      const id = causes[at] ?? "";
      let weight = chance;
      for (const { check, outcome } of seen)
        weight *= Math.max(least, reports.get(check)?.chance[outcome]?.[at] ?? 0) ** told;
      if (fixed && causes.includes(fixed) && id !== fixed) weight *= doubt.untrue;
      if (vain.includes(id)) weight *= doubt.vain;
      return weight;
    });
    const total = weights.reduce((sum, one) => sum + one, 0);
    return total > 0 ? weights.map((one) => one / total) : [...from];
  }
}
