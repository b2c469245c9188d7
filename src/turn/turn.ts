import type { ReadingNeed } from "../instruments/index.ts";
import type { FoundModel, FoundPart, Plate } from "./lookups.ts";

/**
 * A Turn is one exchange as a screen (or a line of `npm run play`) shows it: plain data, every text already in
 * the reader's language. A screen never sees the chart behind it.
 */
export type Turn = {
  /** Stable id, `check.turn`, e.g. `door-seal.paper-strip`. */
  turn: string;
  kind: "choice" | "gate" | "reading" | "model" | "wait" | "ending";
  /** Where on the ice path this turn looks; null for the opening and the endings. */
  station: string | null;
  hazards: Hazard[];
  /** The hazards were confirmed at a gate just before: a reminder is enough. */
  gated: boolean;
  /** The question, or the ending's headline. */
  heading: string;
  /** How to do it: steps in order, one each; at an ending short paragraphs, as all it has of steps is `back`. */
  body: string[];
  /** What is no step of it: a caution, or what a result means. Empty where nothing is to be added. */
  note: string;
  /** Why we ask this, and why now; empty where nobody would wonder. */
  why: string;
  /** Minutes of attention this check takes, 0 where that says nothing. */
  minutes: number;
  tools: string[];
  /** A picture's id, or null. */
  picture: string | null;
  answers: Answer[];
  gate: Gate | null;
  reading: ReadingNeed | null;
  wait: Wait | null;
  ending: Ending | null;
  /** What the answer before this turn means, in one short sentence; empty where it has told little. */
  means: string;
  /** What it most likely is so far, in words, and about how many checks are left; none and 0 where nothing is believed yet. */
  likely: string[];
  left: number;
  /** What we had changed in the home and is not put back yet, such as a closed tap, each in two or three words. */
  changed: { id: string; text: string }[];
  path: PathMark[];
  /** The path in words, for a screen reader. */
  pathText: string;
};

/** ANSI Z535.6 signal words, most severe first. */
export type Signal = "danger" | "warning" | "caution" | "notice";

export type Hazard = { id: string; signal: Signal; text: string };

/** `role` tells the two answers every turn has (not sure, can't do this) from its own. */
export type Answer = { id: string; text: string; role: "own" | "not-sure" | "cannot" };

/**
 * A safety gate: every item must be ticked, each time, before `ready` is taken. `short`: all of it was confirmed a moment
 * ago, and one line asks whether it is still so.
 */
export type Gate = {
  id: string;
  short: boolean;
  signal: Signal;
  items: { id: string; text: string }[];
  facts: string[];
  /** The name of the check that it leads to. */
  next: string;
  /** How long a tick stays over a reload. */
  minutes: number;
};

/**
 * A wait that survives a closed page: `from` and `until` are RFC 3339 instants. `inside`: what goes on in the machine
 * meanwhile, each from its instant on; empty where nothing is known of it.
 */
export type Wait = { from: string; until: string; inside: { text: string; from: string }[] };

export type Ending = {
  /** `later`: what was put right needs a day, and the search goes on where that does not help. */
  outcome: "fixed" | "later" | "part" | "professional" | "stopped";
  /** The cause in words, empty where none was established. */
  cause: string;
  causeId: string | null;
  /** Where a professional is called or a part is named: what else it most likely is, likeliest first, without the cause above. */
  likely: { causeId: string; cause: string; part: string; station: string }[];
  /** Parts that were fitted without help, by name. */
  tried: string[];
  /** Who to call, for professional and stopped. */
  who: string;
  /** Whether mending is worth its price, in short sentences; what to do for ice until it is mended. */
  worth: string[];
  until: string;
  /** Asked where that turns on the age of the machine, and what is said instead for each answer; else null. */
  age: { ask: string; options: { id: string; text: string; worth: string[] }[] } | null;
  part: {
    kind: string;
    name: string;
    claim: "proved" | "due";
    claimText: string;
    fitting: string;
    effortMinutes: number;
    tools: string[];
    cautions: Hazard[];
    model: string | null;
    /** The drawing that shows where it sits, or null. */
    picture: string | null;
  } | null;
  /** What is left to do of what we had changed: steps in order; none at a stop, whose advice says it. */
  back: string[];
  evidence: Evidence[];
};

/** One finding in words: what was looked at, what was found, whether it speaks for the ending, and in which own words it was said. */
export type Evidence = { turn: string; check: string; found: string; proves: boolean; words?: string };

/** One station of the ice path and what we know of it. */
export type PathMark = {
  station: string;
  name: string;
  state: "clear" | "fixed" | "suspect" | "unseen";
  here: boolean;
  /** True for what acts on the water from outside its way: the picture has a row of its own for these. */
  above: boolean;
};

/** An earlier turn folded to a line. `drops` counts the later answers: a change keeps those that still fit. */
export type Line = {
  index: number;
  turn: string;
  title: string;
  /** Beside `words` it says what they were taken as. */
  answer: string;
  /** What was typed for it, as one line of plain text. */
  words?: string;
  drops: number;
  canChange: boolean;
};

/** Something to tell once, above the turn: saved elsewhere, shortened, in memory only, welcome back. */
export type Notice = {
  id:
    | "memory-only"
    | "welcome-back"
    | "wait-over"
    | "wait-ended"
    | "shortened"
    | "offline"
    | "other-tab"
    | "tap-not-taken"
    | "carried"
    | "link-broken"
    | "set-aside"
    | "forgotten"
    | "filter-due";
  text: string;
  /** The words of its button, where it has one: other answers were set aside, or came with a link, and can be gone on with. */
  goOn?: string;
};

export type { FoundModel, FoundPart, Plate };

/** What whoever takes over has to know, on a page, from any turn on. All of it is text; parts without lines are left out. */
export type Handover = { title: string; parts: { heading: string; lines: string[] }[] };
