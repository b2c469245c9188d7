import type { Condition } from "../condition/index.ts";
import type { InstrumentName, ReadingVerdict } from "../instruments/index.ts";
import type { Limits, Region } from "../measuring/index.ts";

/** What the trade knows, as read from flows/: plain data, no code and no expressions. */
export type Flow = {
  /** Changes with every edit of flows/, so that an older log is known for one. */
  version: string;
  limits: Limits;
  words: Words;
  stations: { order: string[]; above: string[]; access: Record<string, string> };
  hazards: Record<string, HazardRule>;
  access: Record<string, string[]>;
  gates: Record<string, GateRule>;
  parts: Record<string, PartRule>;
  conditions: Record<string, Condition>;
  causes: Record<string, CauseRule>;
  opening: Opening;
  checks: Record<string, Check>;
  scenarios: Record<string, Scenario>;
  /** By ISO 3166 code. */
  regions: Record<string, Region>;
};

export type Signal = "danger" | "warning" | "caution" | "notice";

export type HazardRule = { signal: Signal; gate: "required" | "none" };
export type GateRule = {
  signal: Signal;
  covers: string[];
  items: string[];
  facts: string[];
  picture: string;
  leaves?: Leaves | undefined;
};

/** How a confirmed gate or an answer leaves the water; `left-closed`: it should be opened again and could not be. */
export type Leaves = { water: "closed" | "left-closed" | "open" };
/** `who`: the trade that fits it, where a householder does not. */
export type PartRule = {
  minutes: number;
  tools: string[];
  access: string;
  fitting: "self" | "professional";
  who?: string | undefined;
};

export type CauseRule = {
  station: string;
  remedy: "self" | "part" | "professional";
  part?: string | undefined;
  who?: string | undefined;
  /** `due`: worth replacing whatever the cause turns out to be; said so on the card. */
  claim?: "proved" | "due" | undefined;
  proof?: Condition | undefined;
  /** The water stays closed until this is mended. */
  keeps?: Keeps | undefined;
};

export type Keeps = { water: "closed" };

export type Opening = { id: string; start: string; turns: Record<string, TurnRule> };

export type Check = Opening & {
  station: string;
  access: string;
  minutes: number;
  tools: string[];
  hazards?: string[] | undefined;
  gates?: string[] | undefined;
  /** Puts back what we had changed: asked wherever the chart needs it, and named by no scenario. */
  restores?: "water" | undefined;
  /** Asked as often as its condition holds, not once a session. */
  repeats?: boolean | undefined;
  /** Checks that measure the same thing share a group and count once, the latest; a check alone is its own group. */
  measures?: string | undefined;
  /** What the check as a whole can show, as one experiment. Findings that stand in no outcome say nothing. */
  outcomes?: Record<string, CheckOutcome> | undefined;
};

export type CheckOutcome = {
  /** The findings that mean this outcome, as `turn.answer` within the check. */
  from: string[];
  /** How often each cause shows this outcome, in words of words.yaml; `otherwise` for causes not named. */
  says: Record<string, string>;
};

export type Words = { likelihood: Record<string, number>; prior: Record<string, number> };

export type TurnRule = {
  kind?: "choice" | "reading" | "wait" | undefined;
  picture?: string | undefined;
  instrument?: InstrumentName | undefined;
  /** Where a temperature is taken; the freezer unless said. */
  place?: "freezer" | "fridge" | undefined;
  /** Turns whose flow this one is compared with; the first that was measured counts. */
  against?: string[] | undefined;
  /** A wait's length: the id of a limit in hours or minutes; `then` is the turn that follows when it is over. */
  lasts?: string | undefined;
  then?: string | undefined;
  /** What goes on inside meanwhile, in order; each begins after a limit in hours or minutes, the first at once. */
  inside?: { stage: string; after?: string | undefined }[] | undefined;
  /** Makes no sense while the tap is closed. */
  needs?: { water: "open" } | undefined;
  /** Counts as the wait that a remedy calls for. */
  waits?: boolean | undefined;
  answers?: Record<string, Outcome> | undefined;
  verdicts?: Partial<Record<ReadingVerdict, Outcome>> | undefined;
  /** Where the two standing answers lead; `done` unless said, `false` where the question leaves no room for it. */
  "not-sure"?: Outcome | false | undefined;
  cannot?: Outcome | false | undefined;
};

/** Where an answer leads (a turn of the same check, `done`, or an ending) and what it tells. */
export type Outcome = {
  to: string;
  finds?: string | undefined;
  remedies?: string | undefined;
  clears?: string[] | undefined;
  suspects?: string[] | undefined;
  danger?: boolean | undefined;
  leaves?: Leaves | undefined;
};

export type Scenario = {
  id: string;
  when: Condition;
  /** How common each cause is before anything is known, in words of words.yaml: judgement. */
  priors: Record<string, string>;
  proofs: string[];
  /** In the trade's order. `first`: before any advice, whenever it is allowed. */
  checks: { check: string; when?: Condition | undefined; first?: boolean | undefined }[];
  otherwise: { to: "professional"; who: string };
  /** A leak is searched for: the water stays closed at every ending but a fixed one. */
  keeps?: Keeps | undefined;
};
