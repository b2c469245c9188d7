import { causesOf, learnableCauses, reportsOf, sharesOf } from "../../compile/index.ts";
import { anythingElse, type Flow, limitOf } from "../../guide/index.ts";
import type { Search, Searches } from "./searches.ts";

/** The rate of an error as flows/ names its limit, `error-look` for one. */
export type ErrorId = NonNullable<ReturnType<typeof reportsOf>["error"]>;
export type Rates = Record<string, number>;

/** The searches of one scenario that are weighed alike. */
export type Stratum = {
  causes: readonly string[];
  /** P(cause) as flows/ judges, summing to 1; of causes that keep it whatever was found, `isFixed`. */
  base: number[];
  isFixed: boolean[];
  searches: { count: number; search: Search | null; cause: number }[];
  /** P(what a check showed | cause) at given rates. */
  tables: Map<string, ReturnType<typeof reportsOf>>;
};

/** Searches as they are weighed: by scenario, and apart from each other those with and without what was seen. */
export function strataOf(flow: Flow, { counts, seen }: Searches): Stratum[] {
  const counted = [...counts].map(([scenario, of]): Stratum => {
    const shares = learnableCauses(flow, scenario);
    const causes = Object.keys(shares);
    return {
      causes,
      base: Object.values(shares),
      isFixed: causes.map(() => false),
      searches: [...of].map(([cause, count]) => ({ count, search: null, cause: causes.indexOf(cause) })),
      tables: new Map(),
    };
  });
  const byScenario = new Map<string, Stratum>();
  for (const { search, count } of seen.values()) {
    const stratum = byScenario.get(search.scenario) ?? seenStratum(flow, search.scenario);
    byScenario.set(search.scenario, stratum);
    stratum.searches.push({ count, search, cause: -1 });
    for (const { check } of search.seen)
      if (!stratum.tables.has(check))
        stratum.tables.set(check, reportsOf(flow, search.scenario, check, stratum.causes));
  }
  return [...counted, ...byScenario.values()];
}

function seenStratum(flow: Flow, scenario: string): Stratum {
  const causes = causesOf(flow, scenario);
  const shares = sharesOf(flow, scenario, null);
  const least = limitOf(flow.limits, "negligible-share");
  const weights = causes.map((id) => shares[id] ?? least);
  const total = weights.reduce((sum, one) => sum + one, 0);
  return {
    causes,
    base: weights.map((one) => one / total),
    isFixed: causes.map((id) => id === anythingElse),
    searches: [],
    tables: new Map(),
  };
}
