import { type Preparation, type Prepared, stateAfter, statesIn } from "../guide/index.ts";
import type { Reading } from "../instruments/index.ts";

/** What one turn recorded. `answer` is an answer's id, or a verdict where a reading was taken. */
export type Finding = { answer: string; reading?: Reading; at: string };

/** How a preparation stands, and since when. */
export type Stand = { is: string; since: string };

/** What the chart remembers of a session. Plain JSON; equal logs give equal memories. */
export type ChartContext = {
  findings: Record<string, Finding>;
  causes: Record<string, "found" | "fixed">;
  /** Checks that were finished or passed over, in the order of their latest end. */
  done: string[];
  /** Checks that had a second look, and those in which something was put right. */
  again: string[];
  mended: string[];
  /** Causes put right since the last wait in vain, and those, one entry a try, after which what was waited for stayed away. */
  untried: string[];
  inVain: string[];
  /** Causes that were proved, and whose part was fitted without help. */
  fitted: string[];
  /** How many answers were given, gates and waits included. */
  turns: number;
  /** Instants at which each wait began, by turn. */
  waits: Record<string, string>;
  remedies: number;
  remediesAtWait: number;
  /** The turn to come back to once a gate has been passed again after an interruption. */
  returnTo: string | null;
  /** What was changed in the home; what is not named is as it was found. */
  prepared: Partial<Record<Preparation, Stand>>;
  /** Gates that were confirmed in full in this visit: when, and by whom. */
  confirmed: Record<string, { at: string; by: string }>;
  /** Gates that the person can't confirm: no step behind one is offered any more. */
  refused: string[];
  marks: { station: string; state: "clear" | "suspect" | "fixed" }[];
  lastFixed: string | null;
  /** Why the session ended, and how the model code was given. */
  cause: string | null;
  who: string | null;
  /** The likeliest causes when a professional was called, likeliest first. */
  likely: string[];
  danger: string | null;
  model: string | null;
};

/**
 * A memory before the first answer; `model` where the shop's page already knows the model code, `left` what a session
 * before this one has left to be put back.
 */
export function createMemory(model: string | null = null, left: Prepared = {}): ChartContext {
  return {
    findings: {},
    causes: {},
    done: [],
    again: [],
    mended: [],
    untried: [],
    inVain: [],
    fitted: [],
    turns: 0,
    waits: {},
    remedies: 0,
    remediesAtWait: 0,
    returnTo: null,
    prepared: inherit({}, left, ""),
    confirmed: {},
    refused: [],
    marks: [],
    lastFixed: null,
    cause: null,
    who: null,
    likely: [],
    danger: null,
    model,
  };
}

/** What a transition of the composed chart notes down. Every field is optional. */
export type Note = {
  turn?: string;
  answer?: string;
  station?: string;
  finds?: string;
  remedies?: string;
  /** Checks whose findings no longer hold. */
  forgets?: string[];
  /** The station where the cause found or put right sits. */
  causeStation?: string;
  clears?: string[];
  suspects?: string[];
  done?: string;
  /** The check that gets a second look: what it found does not count any more. */
  again?: { check: string; found: string[] };
  waitStarts?: string;
  waited?: boolean;
  /** A wait ended without what was waited for. */
  inVain?: boolean;
  /** The part that the ending named was fitted, and it still happens. */
  fitted?: true;
  returnTo?: string | null;
  cause?: string | null;
  /** The ending is owed to whatever was put right last, by this very answer or before it. */
  creditsLastFix?: boolean;
  who?: string;
  /** A professional is called: the event says what is likeliest, and `who` where the trade follows from that. */
  calls?: "somebody" | "by-belief";
  danger?: string;
  /** How it leaves what is prepared. */
  leaves?: Prepared;
  /** A gate that is confirmed in full, and one that can't be. */
  confirms?: string;
  refuses?: string;
  /** Somebody comes back: whatever was confirmed before is to be confirmed again. */
  returns?: true;
};

/**
 * What is best next: a check, or the part for a cause that is proved; neither where a professional is. `led`: it is what
 * a replayed log goes on with. `later`: what was put right needs time, and nobody waits for it now. `call`: what to tell a
 * professional, if one is called now.
 */
export type Advice = {
  check: string | null;
  part: string | null;
  led?: boolean;
  later?: boolean;
  call?: Call;
};

/** The likeliest causes, likeliest first, and the trade that most of them need; null where none needs one. */
export type Call = { likely: string[]; who: string | null };

/**
 * `advice` comes with an event that leads to a choice; without it nothing is advised. `by`: who did it, where that is
 * known; a gate that somebody else confirmed is asked in full.
 */
export type ChartEvent = {
  type: string;
  at: string;
  by?: string;
  reading?: Reading;
  code?: string | null;
  advice?: Advice;
};

/** The memory after a transition: pure, and the only place where memory changes. */
export function remember(memory: ChartContext, note: Note, event: ChartEvent): ChartContext {
  const next = { ...memory };
  if (note.turn && note.answer) {
    const finding: Finding = { answer: note.answer, at: event.at };
    if (event.reading) finding.reading = event.reading;
    next.findings = { ...memory.findings, [note.turn]: finding };
    next.turns = memory.turns + 1;
  }
  if (note.forgets) next.findings = without(next.findings, note.forgets);
  if (note.again) {
    const { check, found } = note.again;
    next.again = [...memory.again, check];
    next.findings = without(next.findings, [check]);
    const causes = Object.entries(memory.causes);
    next.causes = Object.fromEntries(causes.filter(([id, how]) => how === "fixed" || !found.includes(id)));
  }
  const marks = [...memory.marks];
  for (const station of note.clears ?? []) marks.push({ station, state: "clear" });
  for (const station of note.suspects ?? []) marks.push({ station, state: "suspect" });
  if (note.finds) {
    next.causes = { ...memory.causes, [note.finds]: "found" };
    if (note.causeStation) marks.push({ station: note.causeStation, state: "suspect" });
  }
  if (note.remedies) {
    next.causes = { ...next.causes, [note.remedies]: "fixed" };
    next.remedies = memory.remedies + 1;
    next.lastFixed = note.remedies;
    next.untried = [...memory.untried.filter((cause) => cause !== note.remedies), note.remedies];
    next.mended = [...memory.mended, checkOf(note.turn ?? "")];
    if (note.causeStation) marks.push({ station: note.causeStation, state: "fixed" });
  }
  next.marks = marks;
  if (note.done) next.done = [...memory.done.filter((check) => check !== note.done), note.done];
  if (note.waitStarts) next.waits = { ...memory.waits, [note.waitStarts]: event.at };
  if (note.waited) next.remediesAtWait = next.remedies;
  if (note.inVain) {
    next.inVain = [...memory.inVain, ...next.untried];
    next.untried = [];
  }
  if (note.fitted && memory.cause) next.fitted = [...memory.fitted, memory.cause];
  if (note.returnTo !== undefined) next.returnTo = note.returnTo;
  if (note.cause !== undefined) next.cause = note.cause;
  if (note.creditsLastFix) next.cause = note.remedies ?? memory.lastFixed;
  if (note.who) next.who = note.who;
  if (note.calls) {
    next.likely = event.advice?.call?.likely ?? [];
    if (note.calls === "by-belief") next.who = event.advice?.call?.who ?? next.who;
  }
  if (note.danger) next.danger = note.danger;
  if (note.leaves) next.prepared = afterLeaving(memory.prepared, note.leaves, event.at);
  if (note.returns) next.confirmed = {};
  if (note.confirms)
    next.confirmed = { ...memory.confirmed, [note.confirms]: { at: event.at, by: event.by ?? "" } };
  if (note.refuses) next.refused = [...memory.refused, note.refuses];
  if (event.code !== undefined) next.model = event.code;
  return next;
}

/** What is prepared where something before this session, or no longer in its log, has left it so. @param at RFC 3339 */
export function inherit(
  prepared: ChartContext["prepared"],
  left: Prepared,
  at: string,
): ChartContext["prepared"] {
  const all = statesIn(left).map(([one, is]) => [one, { is, since: at }]);
  return { ...prepared, ...Object.fromEntries(all) };
}

/** What is prepared after a step; a state that goes on keeps the instant at which it began. */
function afterLeaving(
  prepared: ChartContext["prepared"],
  leaves: Prepared,
  at: string,
): ChartContext["prepared"] {
  const next = { ...prepared };
  for (const [one, state] of statesIn(leaves)) {
    const before = prepared[one];
    const is = stateAfter(one, before?.is ?? null, state);
    if (is && is !== before?.is) next[one] = { is, since: at };
  }
  return next;
}

const checkOf = (turn: string) => turn.split(".")[0] ?? "";

function without(findings: Record<string, Finding>, checks: string[]): Record<string, Finding> {
  return Object.fromEntries(Object.entries(findings).filter(([turn]) => !checks.includes(checkOf(turn))));
}
