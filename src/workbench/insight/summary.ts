import type { Counts, Outcome, ScenarioTally, Tally } from "./tally.ts";

export type Row = { id: string; count: number };

/** What a tally comes to for one scenario; most frequent first. */
export type ScenarioSummary = {
  /** 'opening' where the search had not come to one. */
  id: string;
  ended: { id: Outcome; count: number; share: number }[];
  endings: number;
  /** Null where nothing has ended. */
  medianMinutes: number | null;
  causes: Row[];
  /** What was said a day or more later, by ending. */
  lasted: Row[];
  /** The same by what was put right. */
  held: Row[];
  /** Turns at which people left and did not come back. */
  gaveUp: Row[];
  /** The same of turns that are a wait. */
  waiting: Row[];
  notUnderstood: Row[];
};

export type Summary = {
  lines: number;
  bad: number;
  started: number;
  scenarios: ScenarioSummary[];
  missing: Row[];
};

/** The order in which endings are shown, the best first. */
export const outcomes: readonly Outcome[] = ["fixed", "later", "part", "professional", "stopped"];

/** What a tally comes to. Of each list the `most` most frequent. */
export function summarise(tally: Tally, most = 20): Summary {
  const scenarios = [...tally.scenarios]
    .map(([id, one]) => summaryOf(id || "opening", one, tally.waits, most))
    .sort((one, other) => other.endings - one.endings || (one.id < other.id ? -1 : 1));
  const { lines, bad, started } = tally;
  return { lines, bad, started, scenarios, missing: topOf(tally.missing, most) };
}

function summaryOf(
  id: string,
  one: ScenarioTally,
  waits: ReadonlySet<string>,
  most: number,
): ScenarioSummary {
  const endings = Object.values(one.ended).reduce((sum, each) => sum + each, 0);
  const away = rowsOf({
    of: new Map([...one.left.of].map(([turn, count]) => [turn, count - (one.returned.of.get(turn) ?? 0)])),
  }).filter(({ count }) => count > 0);
  return {
    id,
    endings,
    ended: outcomes.flatMap((outcome) => {
      const count = one.ended[outcome] ?? 0;
      return count ? [{ id: outcome, count, share: count / endings }] : [];
    }),
    medianMinutes: medianOf(one.minutes, endings),
    causes: topOf(one.causes, most),
    lasted: topOf(one.lasted, most),
    held: topOf(one.held, most),
    gaveUp: away.filter((row) => !waits.has(row.id)).slice(0, most),
    waiting: away.filter((row) => waits.has(row.id)).slice(0, most),
    notUnderstood: topOf(one.notUnderstood, most),
  };
}

function rowsOf({ of }: Pick<Counts, "of">): Row[] {
  const rows = [...of].map(([id, count]) => ({ id, count }));
  return rows.sort((one, other) => other.count - one.count || (one.id < other.id ? -1 : 1));
}

/** The most frequent, and all the rest as one row. */
function topOf(counts: Counts, most: number): Row[] {
  const rows = rowsOf(counts);
  const rest = rows.slice(most).reduce((sum, { count }) => sum + count, counts.others);
  return [...rows.slice(0, most), ...(rest ? [{ id: "others", count: rest }] : [])];
}

/** The lower median of a histogram by minutes. */
function medianOf(histogram: readonly number[], all: number): number | null {
  let seen = 0;
  for (let minutes = 0; minutes < histogram.length; minutes++) {
    seen += histogram[minutes] ?? 0;
    if (seen * 2 >= all && all > 0) return minutes;
  }
  return null;
}
