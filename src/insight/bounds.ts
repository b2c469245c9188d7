/** What a line of outcomes, and whoever gathers them, may hold; without a source all of these are judgement. */
export const insightBounds = {
  /** Characters of an id of flows/: a scenario, a cause, an outcome. */
  id: 80,
  /** Characters of a turn, which is a check and its turn. */
  turn: 160,
  /** Characters of a model code, without its dashes and blanks. */
  code: 24,
  /** Minutes in front of the panel; longer is a day and no search. */
  minutes: 1440,
  /** Days after an ending; a search is gone on with for thirty. */
  days: 400,
  /** Answers of one search. */
  answers: 1000,
  /** Bytes of one line. */
  line: 1000,
  /** Lines that wait on a phone to be sent. */
  waiting: 40,
  /** Bytes of one batch: a browser takes 64 KiB at most for all beacons together (Fetch standard, keepalive). */
  batch: 16_000,
  /** Different ids of one kind that a report counts apart; our own flows have two hundred turns. */
  counted: 5000,
} as const;
