import { learnableCauses } from "../../compile/index.ts";
import type { Flow } from "../../guide/index.ts";
import type { InsightLine } from "../../insight/index.ts";

/** A search whose checks are known: what they showed, and what was put right with and without success. */
export type Search = {
  scenario: string;
  /** Checks with the place of what they showed among their outcomes; of those that measure the same thing the latest. */
  seen: { check: string; outcome: number }[];
  fixed: string | null;
  vain: string[];
};

/** What is learnt from. */
export type Searches = {
  /** How often each cause was established, by scenario: all that lines of format 1 say. */
  counts: Map<string, Map<string, number>>;
  /** Searches with what was seen, and how often each was the same. */
  seen: Map<string, { search: Search; count: number }>;
};

/** Different searches that are held at once; more would say little that these do not (judgement). */
const mostSearches = 100_000;

export const createSearches = (): Searches => ({ counts: new Map(), seen: new Map() });

/**
 * Counts an ending that says something of causes.
 * @returns false for a line that says nothing of them, or of none that the scenario has, and for what would be too many
 */
export function countSearch(searches: Searches, flow: Flow, line: InsightLine): boolean {
  if (line.what !== "ended" || !line.scenario || !Object.hasOwn(flow.scenarios, line.scenario)) return false;
  if (line.format === 2) return countSeen(searches, flow, line.scenario, line);
  const { scenario, cause } = line;
  if (!cause || !Object.hasOwn(learnableCauses(flow, scenario), cause)) return false;
  const of = searches.counts.get(scenario) ?? new Map<string, number>();
  searches.counts.set(scenario, of.set(cause, (of.get(cause) ?? 0) + 1));
  return true;
}

type Ended = Extract<InsightLine, { what: "ended"; format: 2 }>;

function countSeen(
  searches: Searches,
  flow: Flow,
  scenario: string,
  { seen, cause, vain, outcome }: Ended,
): boolean {
  const among = new Set(flow.scenarios[scenario]?.checks.map(({ check }) => check));
  const latest = new Map<string, { check: string; outcome: number }>();
  for (const shown of seen) {
    const [id = "", name = ""] = shown.split(".");
    const check = among.has(id) ? flow.checks[id] : undefined;
    const place = Object.keys(check?.outcomes ?? {}).indexOf(name);
    if (place >= 0) latest.set(check?.measures ?? `check ${id}`, { check: id, outcome: place });
  }
  const known = (id: string) => Object.hasOwn(flow.machine.causes, id);
  const search: Search = {
    scenario,
    seen: [...latest.values()],
    fixed: outcome === "fixed" && cause && known(cause) ? cause : null,
    vain: vain.filter(known),
  };
  if (!search.seen.length && !search.fixed && !search.vain.length) return false;
  const key = JSON.stringify(search);
  const same = searches.seen.get(key);
  if (same) same.count++;
  else if (searches.seen.size >= mostSearches) return false;
  else searches.seen.set(key, { search, count: 1 });
  return true;
}
