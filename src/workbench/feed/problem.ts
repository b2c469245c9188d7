/** Where something stands in a feed, both from 1; a column counts UTF-16 units from the start of the line. */
export type Place = { line: number; column: number };

/** What can be wrong in a feed. The first group makes a row unusable, the second leaves something out of it. */
export type FeedFault =
  | "no-heading"
  | "missing-column"
  | "too-few-fields"
  | "too-many-fields"
  | "unterminated-quote"
  | "stray-quote"
  | "field-too-long"
  | "row-too-long"
  | "cut-off"
  | "not-json"
  | "not-an-object"
  | "not-text"
  | "doubled-key"
  | "bad-encoding"
  | "control-character"
  | "empty-field"
  | "bad-model"
  | "bad-number"
  | "bad-kind"
  | "bad-name"
  | "bad-price"
  | "bad-currency"
  | "bad-condition"
  | "brand-conflict"
  | "bad-pattern"
  | "pattern-without-model"
  | "pattern-too-wide"
  // From here on the row is kept.
  | "doubled-heading"
  | "unsafe-link"
  | "name-cut"
  | "bad-stock"
  | "bad-origin"
  | "bad-minutes"
  | "bad-machine"
  | "bad-replacement"
  | "part-conflict"
  | "machine-conflict"
  | "replacement-conflict"
  | "replacement-of-other-kind"
  | "open-chain"
  | "chain-loop";

/** Something wrong in a feed, told to the person who edits it; `found` is the offending text, shortened. */
export type FeedProblem = Place & { code: FeedFault; found?: string; message: string };

const longestFound = 80;

/** The start of a text as a problem shows it. */
export function shorten(text: string): string {
  return text.length > longestFound ? `${text.slice(0, longestFound)}…` : text;
}

/** Problems as they are kept: the first ones whole, all of them counted. */
export type ProblemList = { first: FeedProblem[]; counts: Map<FeedFault, number>; total: number };

/** Eight million bad rows must not fill the memory: beyond the first `most` they are only counted. */
export function createProblemList(most = 100): ProblemList & { add(problem: FeedProblem): void } {
  const list = {
    first: [] as FeedProblem[],
    counts: new Map<FeedFault, number>(),
    total: 0,
    add: (problem: FeedProblem) => {
      if (list.first.length < most) list.first.push(problem);
      list.counts.set(problem.code, (list.counts.get(problem.code) ?? 0) + 1);
      list.total++;
    },
  };
  return list;
}
