import type { FeedProblem, Place } from "./problem.ts";

/** The row that is being handed over; good only during the call. `line` is where it starts. */
export type RowPlace = { readonly line: number; placeOf(field: number): Place };

/** Takes what a reader finds. The list of fields is used again for the next row: whoever keeps it copies it. */
export type RowSink = {
  row(fields: readonly string[], at: RowPlace): void;
  problem(problem: FeedProblem): void;
};

/** Reads a feed piece by piece. The pieces may end anywhere, but between the halves of a character. */
export type FeedReader = { push(text: string): void; end(): void };

/** Most characters of a field, and of a row that has not ended yet; what is longer is no part (judgement). */
export const longestField = 65_536;
export const longestRow = 1_048_576;
