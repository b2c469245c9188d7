import { type Belief, probabilities } from "./belief.ts";
import type { Cause, Check, Model, SetUp, Step } from "./model.ts";

/**
 * What things cost, all in one unit (the flow files use minutes of attention), and what the rules allow. Gates are
 * no part of it: a gate stands before a step or the step is not allowed, but it has no price.
 */
export type Stakes = {
  /** One minute of attention. */
  minute: number;
  /** One hour of waiting. */
  hour: number;
  /** A part bought in vain: its return and a second day without ice. */
  wrongPart: number;
  /** A professional called where nobody had to come. */
  callOut: number;
  /** A professional who had to come, but without the part and has to come again. */
  secondVisit: number;
  /** The wait that shows whether the ice comes back, in hours, and the attention it takes in minutes. */
  waitHours: number;
  waitMinutes: number;
  /** The chance that the ice is back after that wait where the cause was put right. */
  success: number;
  /** The chance that a second look shows what the first one showed because the same eyes look: 0 to 1. */
  sameLook: number;
  /** Least belief in the causes that a part puts right before it may be sold as the cure. */
  belief: number;
  /** The same for a part that is due anyway, and is sold as no more than that. */
  beliefDue: number;
};

/** Where a session stands, apart from the belief. Names that the model does not have are passed over. */
export type State = {
  /** Checks that were finished or passed over. */
  done: readonly string[];
  /** Causes whose proof is recorded. */
  proven: readonly string[];
  /** Causes, not proved to be the one, whose part is due anyway: worth buying, and said to be no more than that. */
  due: readonly string[];
  /** Causes put right since the last wait. */
  fixed: readonly string[];
  /** Whether the wait for ice may be offered now. */
  mayWait: boolean;
  /** What is prepared. */
  held?: readonly string[] | undefined;
};

/** A session as the look-ahead sees it, real or imagined. Not changed once made. */
export type Position = {
  /** Probability by cause. */
  chances: Float64Array;
  /** By check: the place of its latest outcome, {@link silent} or {@link unasked}. */
  shown: Int8Array;
  /** By group: the place of the check whose outcome counts, or -1. */
  counted: Int16Array;
  /** By cause: {@link untouched}, {@link pending} or {@link inVain}. */
  mended: Uint8Array;
  /** The bits of what is prepared. */
  held: number;
};

export const unasked = -2;
export const silent = -1;
export const untouched = 0;
/** Put right, and not yet waited for. */
export const pending = 1;
/** Put right, and the ice stayed away. */
export const inVain = 2;

/** Where a session stands now, ready to look ahead from. */
export function positionOf(model: Model, belief: Belief, state: State): Position {
  const counted = new Int16Array(model.checks.length).fill(-1);
  const shown = Int8Array.from(model.checks, ({ id, outcomes }) => {
    const outcome = outcomes.findIndex((one) => one.id === belief.shown[id]);
    return outcome >= 0 ? outcome : state.done.includes(id) ? silent : unasked;
  });
  for (const [group, { check }] of Object.entries(belief.counted))
    counted[Number(group)] = model.checkAt.get(check) ?? -1;
  const mended = Uint8Array.from(model.causes, ({ id }) =>
    state.fixed.includes(id) ? pending : id in belief.failed ? inVain : untouched,
  );
  const bits = model.preparations.map((id, place) => (state.held?.includes(id) ? 1 << place : 0));
  const held = bits.reduce((all, bit) => all | bit, 0);
  return { chances: probabilities(model, belief), shown, counted, mended, held };
}

/** The chance that a check shows an outcome, and the position it then leads to. */
export function ask(
  model: Model,
  at: Position,
  check: number,
  outcome: number,
  { sameLook }: Stakes,
): { chance: number; next: Position } {
  const rule = model.checks[check];
  const result = rule?.outcomes[outcome];
  if (!rule || !result) return { chance: 0, next: at };
  const rival = at.counted[rule.group] ?? -1;
  const replaced = model.checks[rival]?.outcomes[at.shown[rival] ?? silent]?.chances;
  const chances = new Float64Array(at.chances.length);
  let chance = 0;
  let total = 0;
  for (let cause = 0; cause < chances.length; cause++) {
    const weight = (at.chances[cause] as number) * (result.chances[cause] as number);
    chance += weight;
    // The latest of a group counts: what the one before it said is taken back.
    const kept = replaced ? weight / (replaced[cause] as number) : weight;
    chances[cause] = kept;
    total += kept;
  }
  for (let cause = 0; cause < chances.length; cause++) chances[cause] = (chances[cause] as number) / total;
  const shown = at.shown.slice();
  shown[check] = outcome;
  const counted = at.counted.slice();
  counted[rule.group] = check;
  let mended = at.mended;
  for (const cause of result.fixes) {
    if (mended[cause] !== untouched) continue;
    if (mended === at.mended) mended = at.mended.slice();
    mended[cause] = pending;
  }
  // Asked again, the same check often shows the same, whatever is there.
  if (replaced && rival === check)
    chance = sameLook * Number(at.shown[check] === outcome) + (1 - sameLook) * chance;
  const held = heldAfter(rule, at.held);
  return { chance, next: { chances, shown, counted, mended, held } };
}

/** What is prepared once a check has been asked. */
export function heldAfter({ setUp, undoes }: Pick<Check, "setUp" | "undoes">, held: number): number {
  return setUp.reduce((bits, { bit }) => bits | bit, held & ~undoes);
}

/** The minutes of preparing what is not prepared yet. */
export function setUpMinutes(setUp: readonly SetUp[], held: number): number {
  let minutes = 0;
  for (const one of setUp) if (!(held & one.bit)) minutes += one.minutes;
  return minutes;
}

/** The chance that the ice comes back in a wait, and the position if it does not. */
export function wait(at: Position, success: number): { chance: number; next: Position } {
  let chance = 0;
  for (let cause = 0; cause < at.chances.length; cause++)
    if (at.mended[cause] === pending) chance += (at.chances[cause] as number) * success;
  const chances = at.chances.map((one, cause) =>
    at.mended[cause] === pending ? (one * (1 - success)) / (1 - chance) : one / (1 - chance),
  );
  const mended = at.mended.map((one) => (one === pending ? inVain : one));
  return { chance, next: { ...at, chances, mended } };
}

/** What calling a professional costs where this is the cause: nothing where somebody had to come anyway. */
export function callCost(cause: Cause, mended: number, { callOut, secondVisit }: Stakes): number {
  // Put right without success: nothing is left that a householder could do about it.
  if (cause.remedy === "professional" || mended === inVain) return 0;
  return cause.remedy === "part" && cause.fitting === "professional" ? secondVisit : callOut;
}

/** True when every step of one of the ways is recorded. */
export function isRecorded(ways: readonly (readonly Step[])[], shown: Int8Array): boolean {
  return ways.some((steps) =>
    steps.every(({ check, outcomes }) => outcomes.includes(shown[check] ?? silent)),
  );
}

/** The expected cost of ending now by calling a professional. Chances need not sum to 1. */
export function costOfCalling(
  model: Model,
  chances: Float64Array,
  mended: Uint8Array,
  stakes: Stakes,
): number {
  let cost = 0;
  for (let cause = 0; cause < chances.length; cause++)
    cost +=
      (chances[cause] as number) * callCost(model.causes[cause] as Cause, mended[cause] ?? untouched, stakes);
  return cost;
}

/**
 * The expected cost of ending now with the part for a cause, or Infinity where the belief does not allow it. Where it
 * is wrong it goes back, and a professional is called after all; one that was due anyway stays and costs a wait.
 */
export function costOfSelling(
  model: Model,
  { chances, mended }: Position,
  cause: number,
  due: boolean,
  stakes: Stakes,
): number {
  const part = model.causes[cause]?.part;
  const vain = due ? costOfWaiting(stakes) : stakes.wrongPart;
  let cost = 0;
  let belief = 0;
  for (let one = 0; one < chances.length; one++) {
    const chance = chances[one] as number;
    const rule = model.causes[one] as Cause;
    if (rule.part === part) belief += chance;
    else cost += chance * (vain + callCost(rule, mended[one] ?? untouched, stakes));
  }
  return belief >= (due ? stakes.beliefDue : stakes.belief) ? cost : Infinity;
}

/** What a wait for ice costs. */
export function costOfWaiting({ minute, hour, waitHours, waitMinutes }: Stakes): number {
  return waitHours * hour + waitMinutes * minute;
}
