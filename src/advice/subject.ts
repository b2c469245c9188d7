import type { FlowSlice } from "../chart/index.ts";
import type { Guard } from "../condition/index.ts";
import type { Stakes, Tables } from "../diagnosis/index.ts";
import type { Naming } from "./call-of.ts";

/** What a scenario is advised by, as the build has made it: plain data, nothing left to look up in flows/. */
export type Diagnosis = {
  /** Causes and checks of every opening that leads to the scenario. */
  tables: Tables;
  /** What is among them after which opening. */
  openings: Openings;
  /** The findings that mean each outcome, as turns of its check and their answers: by check, then by outcome. */
  findings: Record<string, Record<string, string[]>>;
  stakes: Stakes;
  /** So many answers, and a professional is called. */
  mostTurns: number;
  /** A free look that tells more than this of causes that need no professional comes before one is called. */
  leastLook: number;
  /** One that tells more than this comes before a tool is fetched. */
  earlyLook: number;
  /** So many second looks at what was answered. */
  mostSecond: number;
  naming: Naming;
  meaning: Meaning;
  /** What else is put right with a cause. */
  cures: Record<string, string[]>;
  /** Least belief in what was put right before a session ends with "give it time". */
  leastHope: number;
  /** In the trade's order. */
  moves: MoveRule[];
  /** The causes that can end the search, in order; their proofs stand with them. */
  proofs: string[];
};

/**
 * When something is said of where a search stands. Stations of at least `least` belief each, `most` at most, are called
 * the likeliest where they have `together` of it; what `had` so much and has `lost` that share of it is called unlikely.
 * `checks`: so many are left in the mean for each bit of doubt, squared.
 */
export type Meaning = {
  least: number;
  most: number;
  together: number;
  had: number;
  lost: number;
  checks: number;
};

/**
 * `turns` of the opening decide; their answers, joined by a blank, name the entry of `models`, by places in the tables.
 * Whatever is not in `entries` has the first.
 */
export type Openings = {
  turns: string[];
  entries: Record<string, number>;
  models: { causes: number[]; weights: number[]; checks: number[] }[];
};

/** A check as something that may be allowed: by `once`, or as a second look by `again`. */
export type MoveRule = {
  check: string;
  /** Comes before everything else, such as turning the water off at a leak. */
  first?: true;
  /** Asked before any tool is fetched, or before anybody is called, however little it may tell. */
  before?: "tools" | "call";
  /** The wait that a remedy calls for: the answers that put it off, as turn and answer. */
  waits?: string[];
  /** Its gates. */
  gates?: string[];
  /** Costs a look and no more: no tool, no gate, no waiting. */
  free?: true;
  /** Behind the back panel: only when all else is spoken for. */
  hidden?: true;
  once: Guard;
  again?: Guard;
};

/** A scenario as its adviser sees it. */
export type Subject = { diagnosis: Diagnosis; flow: Pick<FlowSlice, "causes"> };
