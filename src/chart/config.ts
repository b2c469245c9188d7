import type { Guard } from "../condition/index.ts";
import type { Preparation, Prepared } from "../guide/index.ts";
import type { InstrumentName, TemperaturePlace } from "../instruments/index.ts";
import type { Note } from "./memory.ts";

/** The composed chart as plain JSON, ready for xstate's `createMachine` and for a walk by the verifier. */
export type ChartConfig = { id: string; initial: string; states: Record<string, StateConfig> };

export type StateConfig = {
  id: string;
  initial?: string;
  states?: Record<string, StateConfig>;
  always?: Transition[];
  on?: Record<string, Transition | Transition[]>;
  meta?: TurnMeta;
};

export type Transition = {
  target: string;
  guard?: Guard;
  actions?: { type: string; params: Note }[];
};

/** What a state that waits for a person says about its turn. Texts are found by `turn`. */
export type TurnMeta = {
  turn: string;
  kind: "choice" | "gate" | "reading" | "model" | "wait" | "ending";
  check: string | null;
  station?: string;
  hazards?: string[];
  minutes?: number;
  tools?: string[];
  picture?: string;
  /** Behind a gate. */
  gated?: true;
  /** Opens a check that was chosen among others. */
  chosen?: true;
  /** Ids of the turn's own answers; the standing ones follow from the transitions that are there. */
  answers?: string[];
  gate?: string;
  /** The same gate in one line: it was confirmed in full a moment ago, and nothing has undone it. */
  short?: true;
  instrument?: InstrumentName;
  place?: TemperaturePlace;
  against?: string[];
  /** Minutes that a wait lasts. */
  lasts?: number;
  /** What goes on inside during a wait, with the minutes after which each begins. */
  inside?: { stage: string; after: number }[];
  /** What has to be prepared, or put back, for this turn. */
  needs?: Prepared;
  /** What an ending, or a turn that puts things back, says that is still to be put back. */
  tells?: Preparation[];
  outcome?: "fixed" | "later" | "part" | "professional" | "stopped";
};
