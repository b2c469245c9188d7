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
  /** Checks of one search that a line says what came of, the latest: a scenario has forty, most searches a dozen. */
  seen: 24,
  /** Causes that were put right and changed nothing; so many are seldom tried in one search. */
  vain: 8,
  /** Characters of one outcome: a check and its outcome. */
  outcome: 64,
  /** Bytes of one line: as many outcomes, each as long as may be, and the rest. */
  line: 3000,
  /** Lines that wait on a phone to be sent. */
  waiting: 40,
  /** Bytes of one batch: a browser takes 64 KiB at most for all beacons together (Fetch standard, keepalive). */
  batch: 16_000,
  /** Different ids of one kind that a report counts apart; our own flows have two hundred turns. */
  counted: 5000,
} as const;
