/** `npm run soak` sets this: what takes many minutes is left to it. */
const isSoak = process.env.SOAK === "all";

/** How often each of the long sweeps tries: in every run of the tests, and in `npm run soak`. */
export const counts = {
  /** People who only answer, whatever they answer. */
  answering: isSoak ? 20_000 : 600,
  /** People whose every answer is worked out before they give it. */
  ahead: isSoak ? 400 : 12,
  /** People who answer anything, come and go, and change their answers. */
  wandering: isSoak ? 2000 : 400,
  /** How many of each are replayed after every single step, which costs the square of the steps; the others at their end. */
  replayed: isSoak ? 600 : 20,
  /** Sequences of events a scenario that the SCXML document and our chart are held against each other with. */
  scxml: isSoak ? 500 : 80,
  /** The share of turns that they come to at least; the rare ones need many. */
  scxmlTurns: isSoak ? 0.9 : 0.75,
  /** Whether the walk beside our graph makes the reports of every turn at every visit, or at the first. */
  everyReport: isSoak,
  /** Whether that walk tells snapshots apart in every scenario by all that any scenario turns on. */
  everyMemory: isSoak,
  /** Whether a page that means no good is tried at every place of the gallery, or at a few. */
  everyPlace: isSoak,
  /** Journals with entries of any kind. */
  journals: isSoak ? 2000 : 40,
  /** Slips of a hand in the files of a small flow, and of the project's. */
  slips: isSoak ? 1000 : 100,
  ownSlips: isSoak ? 100 : 5,
  /** Pairs of tabs that act, reload and lose their storage. */
  tabs: isSoak ? 10_000 : 400,
  /** Schedules of lines that drop, double and mix up, and of relays that are killed. */
  lines: isSoak ? 10_000 : 300,
  /** Messages by which an agent would be the householder. */
  forged: isSoak ? 100_000 : 2000,
  /** Draws of every error of a reading, out of which a share is counted. */
  draws: isSoak ? 20_000 : 5000,
  /** Simulated homes that the bench's report is tried on. */
  homes: isSoak ? 1200 : 400,
};
