import { errorLimits } from "../../compile/index.ts";
import { type Flow, limitOf } from "../../guide/index.ts";
import { betaQuantile } from "./beta.ts";
import type { Searches } from "./searches.ts";
import { type ErrorId, type Rates, strataOf } from "./strata.ts";
import { type Weighed, weigh } from "./weigh.ts";

/** A share as the trade judges it and as it is now, with the interval that holds it in 95 of 100 cases. */
export type Estimate = {
  was: number;
  is: number;
  low: number;
  high: number;
  /** The interval has no room for the trade's judgement. */
  hasMoved: boolean;
};

export type LearntCause = Estimate & {
  cause: string;
  /** In how many searches it was what was wrong; a broken number where what was seen leaves that open. */
  count: number;
  /** Homes in 1,000, as flows/machine/causes/ has it: before, and as it would be. */
  share: { was: number; is: number };
};

export type LearntError = Estimate & { error: ErrorId; reports: number };

export type Learnt = { causes: LearntCause[]; errors: LearntError[] };

/** Passes over all searches until nothing moves, and how little that is. */
const [mostPasses, still] = [60, 1e-3];

/** How often people say that it works where something else was wrong (judgement). */
const untrue = 0.02;
/** For so many searches it counts that causes are mended as often as others (judgement). */
const alike = 20;
/** No more than that is an error: beyond it an answer would say the reverse. */
const mostError = 0.45;

/**
 * Shares of causes and rates of error by what was found, with the trade's judgement as prior (Dirichlet and Beta), by
 * expectation and maximisation: what was wrong in a search is known by its evidence alone, of which a fix that helped is
 * the best. Which checks were asked is no evidence, as it hangs on what was answered and on nothing else. The mix of
 * scenarios is taken as it came.
 * @param worth for how many searches the judgement counts
 */
export function learnFrom(flow: Flow, searches: Searches, worth: number): Learnt {
  const strata = strataOf(flow, searches);
  const all = strata.reduce((sum, one) => sum + one.searches.reduce((of, { count }) => of + count, 0), 0);
  const judgedRates: Rates = Object.fromEntries(
    Object.values(errorLimits).map((id) => [id, limitOf(flow.limits, id)]),
  );
  const vain = 1 - limitOf(flow.limits, "fix-success");
  let doubt = { vain, untrue, mended: new Map<string, number>() };
  let times = new Map<string, number>();
  let rates = judgedRates;
  let weighed = weigh(strata, times, rates, doubt);
  const judged = new Map([...weighed.causes].map(([id, { judged }]) => [id, judged / all]));
  for (let pass = 0; pass < mostPasses; pass++) {
    const total = [...judged].reduce((sum, [id, was]) => sum + was * (times.get(id) ?? 1), 0);
    const next = new Map(
      [...weighed.causes].map(([id, { found, expected }]) => {
        const [was, now] = [judged.get(id) ?? 0, times.get(id) ?? 1];
        const prior = (worth * was) / total;
        return [id, (found + worth * was) / (expected / now + prior)] as const;
      }),
    );
    const scale = [...judged].reduce((sum, [id, was]) => sum + was * (next.get(id) ?? 1), 0);
    const mean = [...judged.values()].reduce((sum, was) => sum + was, 0);
    for (const [id, one] of next) next.set(id, (one * mean) / scale);
    const moved = [...next].map(([id, one]) => Math.abs(Math.log(one / (times.get(id) ?? 1))));
    times = next;
    rates = { ...rates, ...ratesIn() };
    doubt = { ...doubt, mended: mendedIn(flow, weighed) };
    weighed = weigh(strata, times, rates, doubt);
    if (Math.max(0, ...moved) < still) break;
  }

  /** The judgement counts for as many reports as come with so many searches. */
  function ratesIn(): Rates {
    return Object.fromEntries(
      [...weighed.errors].map(([id, { reports, wrong }]) => {
        const prior = (worth * reports) / all;
        return [id, Math.min(mostError, (wrong + prior * (judgedRates[id] ?? 0)) / (reports + prior))];
      }),
    );
  }

  const errors = [...weighed.errors].map(([error, { reports, unsure }]): LearntError => {
    const [was, is] = [judgedRates[error] ?? 0, rates[error] ?? 0];
    return { error, reports, ...estimate(was, is, (worth * reports) / all, reports, unsure) };
  });
  const causes = [...weighed.causes].map(([cause, { found, expected, unsure }]): LearntCause => {
    const [was, is] = [judged.get(cause) ?? 0, expected / all];
    const before = flow.machine.causes[cause]?.share ?? 0;
    const after = Math.min(1000, before * (times.get(cause) ?? 1));
    const share = { was: before, is: Number(after.toPrecision(3)) };
    return { cause, count: Number(found.toPrecision(3)), share, ...estimate(was, is, worth, all, unsure) };
  });
  return { causes, errors };
}

/**
 * How often each cause is put right where it is what was wrong. Without it every search that has ended well would count for
 * causes that people can mend, and those that have not would not count against them.
 */
function mendedIn({ causes: rules }: Flow, { causes }: Weighed): Map<string, number> {
  const own = [...causes].filter(([id]) => rules[id]?.remedy === "self");
  const sum = (of: "mended" | "told") => own.reduce((all, [, one]) => all + one[of], 0);
  const usual = sum("told") > 0 ? sum("mended") / sum("told") : 0;
  return new Map(own.map(([id, { mended, told }]) => [id, (mended + alike * usual) / (told + alike)]));
}

/**
 * The interval of a share: of `count` that it was counted in, as many tell as is left once what is unsure of each is taken
 * off (Louis, 1982: information that is missing).
 */
function estimate(was: number, is: number, worth: number, count: number, unsure: number): Estimate {
  const spread = is * (1 - is);
  const telling = spread > 0 ? Math.max(0, count - unsure / spread) : count;
  const [a, b] = [is * (worth + telling), (1 - is) * (worth + telling)];
  const [low, high] = a > 0 && b > 0 ? [betaQuantile(0.025, a, b), betaQuantile(0.975, a, b)] : [is, is];
  return { was, is, low, high, hasMoved: was < low || was > high };
}
