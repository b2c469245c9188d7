import type { Cause, Check, Model, Step } from "./model.ts";
import {
  callCost,
  costOfCalling,
  costOfSelling,
  costOfWaiting,
  isRecorded,
  type Position,
  pending,
  type Stakes,
  type State,
  unasked,
  untouched,
} from "./position.ts";

/**
 * What is allowed in the real position: by check, whether it may be asked; by cause, whether it is {@link isProven},
 * {@link isDue} or neither.
 */
export type Leave = { allowed: Uint8Array; proven: Uint8Array };

export const isProven = 1;
export const isDue = 2;

export function leaveOf(model: Model, allowed: readonly string[], { proven, due }: State): Leave {
  return {
    allowed: Uint8Array.from(model.checks, ({ id }) => Number(allowed.includes(id))),
    proven: Uint8Array.from(model.causes, ({ id }) =>
      proven.includes(id) ? isProven : due.includes(id) ? isDue : 0,
    ),
  };
}

/** True where a check can be asked in this position, real or imagined. */
export function isOpen(check: Check, place: number, { shown }: Position, { allowed }: Leave): boolean {
  return shown[place] === unasked && (allowed[place] === 1 || isRecorded(check.needs, shown));
}

/** What asking a check costs: attention, and the waiting that some of its outcomes take. */
export function costOfAsking({ minutes, outcomes }: Check, { chances }: Position, stakes: Stakes): number {
  let hours = 0;
  for (const outcome of outcomes) {
    if (!outcome.hours) continue;
    for (let cause = 0; cause < chances.length; cause++)
      hours += outcome.hours * (chances[cause] as number) * (outcome.chances[cause] as number);
  }
  return minutes * stakes.minute + hours * stakes.hour;
}

/** The expected cost of ending now: by a professional, or by a part that may be sold. */
export function costOfStopping(model: Model, at: Position, stakes: Stakes, { proven }: Leave): number {
  let least = costOfCalling(model, at.chances, at.mended, stakes);
  for (let cause = 0; cause < proven.length; cause++) {
    const { proofs, remedy, claim } = model.causes[cause] as Cause;
    if (remedy !== "part") continue;
    const recorded = isRecorded(proofs, at.shown);
    const sure = proven[cause] === isProven || (recorded && claim === "proved");
    if (sure || recorded || proven[cause] === isDue)
      least = Math.min(least, costOfSelling(model, at, cause, !sure, stakes));
  }
  return least;
}

/** Shares of chance below this do not change a plan. */
const negligible = 2e-3;
/** Proofs are long: causes less likely than this are not worth setting out for. */
const unlikely = 0.01;

/**
 * Makes the estimate of a position's worth: the expected cost to the end by a whole plan without look-ahead. Its moves
 * are checks that find and fix, what a proof still lacks, and the wait for ice, in falling order of p/C, then a
 * professional after as many of them as are worth it (Heckerman, Breese & Rommelse 1995, with the number of moves
 * before the call chosen over whole plans: "stop when p/C falls below 1/call" is known to be wrong).
 */
export function createPlan(model: Model, stakes: Stakes, leave: Leave): (at: Position) => number {
  const waiting = costOfWaiting(stakes);
  const ways = proofWays(model, stakes, leave);
  const fixes = model.checks.flatMap((check, place) =>
    check.repairs.length ? createFix(model, check, place, stakes) : [],
  );
  const left = new Float64Array(model.causes.length);
  const moves: Move[] = [];
  const gather = (at: Position) => {
    moves.length = 0;
    for (const { check, place, move, vain, slow } of fixes) {
      if (!isOpen(check, place, at, leave)) continue;
      let mass = 0;
      for (const { cause, chance } of move.ends)
        if (at.mended[cause] === untouched) mass += (at.chances[cause] as number) * chance;
      if (mass < negligible) continue;
      if (slow) move.costs = costOfAsking(check, at, stakes) + vain;
      move.ratio = mass / move.costs;
      moves.push(move);
    }
    for (const way of ways) {
      const move = way.moveFrom(at);
      if (move) moves.push(move);
    }
    if (at.mended.includes(pending)) moves.push(waitForIce(at, stakes));
  };
  /** Brings the best of the moves from `from` on to that place. */
  const nextMove = (from: number): Move => {
    let best = from;
    for (let one = from + 1; one < moves.length; one++)
      if ((moves[one] as Move).ratio > (moves[best] as Move).ratio) best = one;
    const move = moves[best] as Move;
    moves[best] = moves[from] as Move;
    moves[from] = move;
    return move;
  };
  return (at) => {
    left.set(at.chances);
    let best = costOfStopping(model, at, stakes, leave);
    let calling = costOfCalling(model, left, at.mended, stakes);
    let spent = 0;
    let alive = 1;
    gather(at);
    for (let place = 0; place < moves.length; place++) {
      const { costs, errs, ends, of } = nextMove(place);
      spent += alive * costs + errs;
      for (const { cause, chance } of ends) {
        if (at.mended[cause] !== of) continue;
        const ended = (left[cause] as number) * chance;
        const rule = model.causes[cause] as Cause;
        left[cause] = (left[cause] as number) - ended;
        alive -= ended;
        calling -= ended * callCost(rule, of, stakes);
        if (rule.remedy === "self" && of === untouched) spent += ended * waiting;
      }
      if (spent + calling < best) best = spent + calling;
      if (spent >= best) break;
    }
    return best;
  };
}

/**
 * Something that may end the search. `ends`: the share of a cause's chance that it ends, for causes whose state of
 * repair is `of`; `costs`: in trying; `errs`: in ending wrongly; `ratio`: p/C.
 */
type Move = {
  ratio: number;
  costs: number;
  errs: number;
  ends: readonly { cause: number; chance: number }[];
  of: number;
};

/**
 * A check that puts something right on the way; its move is filled in anew for every position. `vain`: what its false
 * alarms cost, each of them a wait for nothing; without that a plan looks cheaper than it is.
 */
type Fix = { check: Check; place: number; move: Move; vain: number; slow: boolean };

function createFix(model: Model, check: Check, place: number, stakes: Stakes): Fix {
  const mine = new Set(check.repairs.map(({ cause }) => cause));
  let alarms = 0;
  for (const { fixes, chances } of check.outcomes)
    for (let cause = 0; fixes.length && cause < chances.length; cause++)
      if (!mine.has(cause)) alarms += (model.priors[cause] as number) * (chances[cause] as number);
  const vain = alarms * costOfWaiting(stakes);
  const costs = check.minutes * stakes.minute + vain;
  const slow = check.outcomes.some(({ hours }) => hours);
  return { check, place, move: { ratio: 0, costs, errs: 0, ends: check.repairs, of: untouched }, vain, slow };
}

type Way = { cause: number; moveFrom: (at: Position) => Move | null };

/** For each cause that a part puts right: what the cheapest of its proofs still lacks, as one move. */
function proofWays(model: Model, stakes: Stakes, leave: Leave): Way[] {
  return model.causes.flatMap(({ proofs, part, remedy, claim }, cause) => {
    if (remedy !== "part" || leave.proven[cause] === isProven) return [];
    const least = claim === "due" ? stakes.beliefDue : stakes.belief;
    const same = model.causes.map((one) => one.part === part);
    // The part puts right whatever it stands for, not only the cause whose proof is the way to it.
    const mates = [...same.keys()].filter((one) => same[one]);
    const lists = proofs.map((steps) => ({ steps, rests: new Map<number, Rest | null>() }));
    const moveFrom = (at: Position): Move | null => {
      let mass = 0;
      for (const one of mates) mass += at.chances[one] as number;
      if (mass < unlikely) return null;
      let best: Move | null = null;
      for (const { steps, rests } of lists) {
        let key = 0;
        for (const { check } of steps) key = key * 32 + (at.shown[check] as number) - unasked;
        let rest = rests.get(key);
        if (rest === undefined) {
          rest = restOf(model, steps, at, stakes, leave);
          rests.set(key, rest);
        }
        if (!rest) continue;
        let right = 0;
        let wrong = 0;
        for (let one = 0; one < same.length; one++) {
          const chance = (at.chances[one] as number) * (rest.accepts[one] as number);
          if (same[one]) right += chance;
          else wrong += chance;
        }
        // A proof that could not convince anyway is no way to an end.
        if (right < least * (right + wrong)) continue;
        const accepts = rest.accepts;
        const ratio = right / rest.costs;
        if (!best || ratio > best.ratio)
          best = {
            ratio,
            costs: rest.costs,
            errs: wrong * stakes.wrongPart,
            ends: mates.map((one) => ({ cause: one, chance: accepts[one] as number })),
            of: untouched,
          };
      }
      return best;
    };
    return [{ cause, moveFrom }];
  });
}

/** What is left of a proof: what it costs, and P(all its steps are accepted | cause). */
type Rest = { costs: number; accepts: Float64Array };

/** What a proof still lacks, or null where a step has gone the other way or cannot be asked any more. */
function restOf(
  model: Model,
  steps: readonly Step[],
  at: Position,
  stakes: Stakes,
  leave: Leave,
): Rest | null {
  const accepts = new Float64Array(model.causes.length).fill(1);
  let costs = Number.MIN_VALUE;
  for (const step of steps) {
    const shown = at.shown[step.check] as number;
    if (step.outcomes.includes(shown)) continue;
    const check = model.checks[step.check] as Check;
    if (shown !== unasked || !(leave.allowed[step.check] || check.needs.length)) return null;
    costs += costOfAsking(check, at, stakes);
    for (let cause = 0; cause < accepts.length; cause++)
      accepts[cause] = (accepts[cause] as number) * (step.accepts[cause] as number);
  }
  return { costs, accepts };
}

function waitForIce(at: Position, stakes: Stakes): Move {
  const ends: { cause: number; chance: number }[] = [];
  let mass = 0;
  for (let cause = 0; cause < at.mended.length; cause++) {
    if (at.mended[cause] !== pending) continue;
    ends.push({ cause, chance: stakes.success });
    mass += (at.chances[cause] as number) * stakes.success;
  }
  const costs = costOfWaiting(stakes);
  return { ratio: mass / costs, costs, errs: 0, ends, of: pending };
}
