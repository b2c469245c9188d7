import type { DateProblem, Estimate, LimitOf, RangeProblem, Region } from "../measuring/index.ts";

/** Looks up a text of locales/ in the reader's language. */
export type Texts = (key: string, values?: Record<string, string | number>) => string;

/** Why a reading cannot be right: a code and what the message needs, and which of its entries it is. */
export type Problem = (RangeProblem | DateProblem) & { field?: string };

/** What a turn of the flow asks to be measured, and where. */
export type Asked = { instrument?: string | undefined; place?: string | undefined };

/** What was measured before in the same session, by another instrument perhaps. */
export type Earlier = { reading: unknown; verdict: string | null; estimate: Estimate | null };

/** What the need of a screen is made of; `earlier` gives the first reading of a kind among those that the turn names. */
export type Asking = Pick<Asked, "place"> & {
  of: LimitOf;
  /** Where the person lives. */
  region: Region;
  /** The person's own day, 'YYYY-MM-DD'. */
  today: string;
  /** RFC 3339; when the wait of the same check began, null where there was none. */
  since: string | null;
  earlier(kind: string): Earlier | null;
};

/** How a reading is put in words: the reader's texts and numbers, and the verdict in words. */
export type Saying = {
  texts: Texts;
  region: Region;
  number(value: number, decimals: number): string;
  /** Half the width of a range: what stands after '±'; one decimal unless said. */
  half(range: { low: number; high: number }, decimals?: number): string;
  verdict: string;
};

/**
 * One way of measuring, without its screen and without the schema of its reading, which lie beside it in `screen.tsx`
 * and `reading.ts`. `today` is the person's own day, 'YYYY-MM-DD'. Nothing in here throws but for a limit that is not
 * there.
 */
export type Instrument<Reading, Limits, Found extends { verdict: string }, Need extends object> = {
  /** What it may say; a turn that takes its reading goes on from each. */
  verdicts: readonly Found["verdict"][];
  /** The limits of flows/limits.yaml that judge a reading. */
  limits(of: LimitOf): Limits;
  /** What cannot be right about a reading, or null. */
  check(reading: Reading, limits: Limits, today: string): Problem | null;
  /** What a reading comes to; expects one that `check` finds no fault with. */
  assess(reading: Reading, limits: Limits, today: string): Found;
  /** The measured quantity, where another instrument builds on it. */
  estimate?(found: Found): Estimate;
  /** Where a turn asks for a reading, and where one was taken; only readings of the asked place answer a turn. */
  place?(of: { place?: string | undefined }): string;
  /** What its screen needs to know. */
  need(asking: Asking): Need;
  /** Its line in the evidence: the reading with its doubt and its verdict. */
  words(reading: Reading, found: Found, saying: Saying, limits: Limits): string;
};
