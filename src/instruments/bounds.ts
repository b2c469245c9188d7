/** What a reading may hold, at most. Without a source these are judgement. */
export const readingBounds = {
  /** A number of a reading, either side of zero. */
  number: 1e9,
  /** A day or a month. */
  date: 40,
  /** Runs of one flow reading: each pair of them is compared, and nobody fills a jug more often. */
  runs: 20,
  /** Places that a strip of paper is pulled at; the survey has twelve. */
  spots: 24,
} as const;
