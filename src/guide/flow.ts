import type { Condition } from "../condition/index.ts";
import type { InstrumentName, ReadingVerdict, TemperaturePlace } from "../instruments/index.ts";
import type { Limits, Region } from "../measuring/index.ts";
import type { Preparation, Prepared } from "./preparations.ts";

/** What the trade knows, as read from flows/: plain data, no code and no expressions. */
export type Flow = {
  /** Changes with every edit of flows/, so that an older log is known for one. */
  version: string;
  limits: Limits;
  words: Words;
  machine: Machine;
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
  care: CareRule;
  /** By ISO 3166 code. */
  regions: Record<string, Region>;
};

export type Signal = "danger" | "warning" | "caution" | "notice";

/** `needs`: the states in which alone a person may be exposed to it. */
export type HazardRule = { signal: Signal; gate: "required" | "none"; needs?: Prepared | undefined };
export type GateRule = {
  signal: Signal;
  covers: string[];
  items: string[];
  facts: string[];
  picture: string;
  /** What was prepared once it is confirmed. */
  leaves?: Prepared | undefined;
  /** Dangers that show themselves just here, and end the session. */
  dangers?: string[] | undefined;
};
/** `who`: the trade that fits it, where a householder does not. `picture`: the drawing that shows where it sits. */
export type PartRule = {
  minutes: number;
  tools: string[];
  access: string;
  fitting: "self" | "professional";
  /** It is changed again and again, whatever age the machine is. */
  consumable?: true | undefined;
  who?: string | undefined;
  picture?: string | undefined;
};

export type CauseRule = {
  station: string;
  remedy: "self" | "part" | "professional";
  part?: string | undefined;
  who?: string | undefined;
  /** `due`: worth replacing whatever the cause turns out to be; said so on the card. */
  claim?: "proved" | "due" | undefined;
  proof?: Condition | undefined;
  /** Whoever puts this right has put those right as well. */
  cures?: string[] | undefined;
  /** The water stays closed until this is mended. */
  keeps?: Keeps | undefined;
};

/** What is said once it works again, in everyday use and around some time away; a flow may have nothing of it. */
export type CareRule = {
  /** The kind of part that a filter is, and the limit that says how long it lasts. */
  filter?: { part: string; months: string; when?: string | undefined } | undefined;
} & Record<CareTime, CareStep[]>;

export type CareTime = "use" | "away" | "return";

/** `gate` stands before the step where what it exposes a person to needs one; `when` names a condition. */
export type CareStep = { id: string; access: string; gate?: string | undefined; when?: string | undefined };

export type Keeps = { water: "closed" };

export type Opening = {
  id: string;
  start: string;
  /** The turn that is shown before anything was answered, and answered ahead of the first. */
  greets?: string | undefined;
  turns: Record<string, TurnRule>;
};

export type Check = Opening & {
  station: string;
  access: string;
  minutes: number;
  tools: string[];
  hazards?: string[] | undefined;
  gates?: string[] | undefined;
  /** Puts back what we had changed: asked wherever the chart needs it, and named by no scenario. */
  /**
   * Asked by the chart before an ending as fixed, where the last reading at this place had one of these verdicts; named
   * by no scenario.
   */
  confirms?: { place: TemperaturePlace; unless: ReadingVerdict[] } | undefined;
  restores?: Preparation[] | undefined;
  /** Asked as often as its condition holds, not once a session. */
  repeats?: boolean | undefined;
  /** Checks that measure the same thing share a group and count once, the latest; a check alone is its own group. */
  measures?: string | undefined;
  /** By which sense the check observes: how often people err so is a limit, `error-look` for one. */
  by?: "reading" | "look" | "listen" | "feel" | "memory" | undefined;
  /** What the check as a whole can show, as one experiment. Findings that stand in no outcome say nothing. */
  outcomes?: Record<string, CheckOutcome> | undefined;
};

/** The first outcome whose `sees` or `shows` is there is what a check shows truly; else the one without either. */
export type CheckOutcome = {
  /** The findings that mean this outcome, as `turn.answer` within the check. */
  from: string[];
  /** Causes that are seen as such. */
  sees?: string[] | undefined;
  /** States of quantities, any of the list: all that one entry names must be there. */
  shows?: States[] | undefined;
  /** How often it can be seen where it is there, in a word of words.yaml; always unless said. */
  caught?: string | undefined;
  /** Only after a second look or a try: who comes to it wrongly has erred twice. */
  confirmed?: boolean | undefined;
  /** Where a check is special, how often a cause shows this, in words of words.yaml; `otherwise` for causes not named. */
  says?: Record<string, string> | undefined;
};

export type Words = { likelihood: Record<string, number> };

/** States of quantities, any of those named. */
export type States = Record<string, string[]>;
/** How likely each state is; made to sum to one. */
export type Spread = Record<string, number>;

/** How the machine works and what each cause does to it. */
export type Machine = {
  /** Upstream first. */
  quantities: Record<string, Quantity>;
  /** How likely a state of a quantity is to be complained of, by complaint, quantity and state. */
  complaints: Record<string, Record<string, Spread>>;
  causes: Record<string, Disturbance>;
};

/** The first state is a sound machine's. The first line of `follows` whose states are there holds. */
export type Quantity = {
  states: string[];
  follows?: { when?: States | undefined; is: Spread }[] | undefined;
};

export type Disturbance = {
  /** Homes in 1,000 where it is what is wrong, nothing having been changed lately. Judgement. */
  share: number;
  reason: string;
  /** Only in machines of this type. */
  machine?: "plumbed" | "tank" | undefined;
  /** So many times likelier after a change, by the opening's answer. */
  lately?: Record<string, number> | undefined;
  /** The share of other homes where it is there too and does no harm. */
  besides?: number | undefined;
  does?: Record<string, Spread> | undefined;
};

export type TurnRule = {
  kind?: "choice" | "reading" | "wait" | undefined;
  picture?: string | undefined;
  instrument?: InstrumentName | undefined;
  /** Where a temperature is taken; the freezer unless said. */
  place?: TemperaturePlace | undefined;
  /** Turns whose flow this one is compared with; the first that was measured counts. */
  against?: string[] | undefined;
  /** A wait's length: the id of a limit in hours or minutes; `then` is the turn that follows when it is over. */
  lasts?: string | undefined;
  then?: string | undefined;
  /** What goes on inside meanwhile, in order; each begins after a limit in hours or minutes, the first at once. */
  inside?: { stage: string; after?: string | undefined }[] | undefined;
  /** Makes sense, or is safe, only so. */
  needs?: Prepared | undefined;
  /** The gates before this turn, its access and more hazards of it, where they are not those of its check. */
  gates?: string[] | undefined;
  access?: string | undefined;
  hazards?: string[] | undefined;
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
  leaves?: Prepared | undefined;
};

export type Scenario = {
  id: string;
  when: Condition;
  /** What people say is wrong, a complaint of the machine. */
  complaint: string;
  proofs: string[];
  /**
   * In the trade's order. `first`: before any advice, whenever it is allowed. `before`: a look that is asked before any tool
   * is fetched, or before anybody is called, however little it may tell.
   */
  checks: {
    check: string;
    when?: Condition | undefined;
    first?: boolean | undefined;
    before?: "tools" | "call" | undefined;
  }[];
  otherwise: { to: "professional"; who: string };
  /** A leak is searched for: the water stays closed at every ending but a fixed one. */
  keeps?: Keeps | undefined;
};
