import { costOfLooking, costOfStopping, isOpen, type Leave } from "./leave.ts";
import type { Cause, Check, Model } from "./model.ts";
import {
  callCost,
  costOfCalling,
  costOfWaiting,
  type Position,
  pending,
  type Stakes,
  setUpMinutes,
  untouched,
} from "./position.ts";
import { type Move, proofWays } from "./proof-ways.ts";

/** Shares of chance below this do not change a plan. */
const negligible = 2e-3;

/**
 * Makes the estimate of a position's worth: the expected cost to the end by a whole plan without look-ahead. Its moves
 * are checks that find and fix, what a proof still lacks, and the wait for ice, in falling order of p/C, then a
 * professional after as many of them as are worth it (Heckerman, Breese & Rommelse 1995, with the number of moves
 * before the call chosen over whole plans: "stop when p/C falls below 1/call" is known to be wrong). Moves that share
 * what has to be prepared stand together: the first is worth as much as the best of them at once (the bottom-up rule of
 * Ottosen & Jensen, arXiv 1203.3502; theirs need not be undone in between, so here it is a rule of thumb).
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
      if (slow) move.costs = costOfLooking(check, at, stakes) + vain;
      move.mass = mass;
      moves.push(move);
    }
    for (const way of ways) {
      const move = way.moveFrom(at);
      if (move) moves.push(move);
    }
    if (at.mended.includes(pending)) moves.push(waitForIce(at, stakes));
  };
  /** Brings the best of the moves from `from` on to that place. */
  const nextMove = (from: number, held: number): Move => {
    let best = from;
    let highest = -1;
    for (let one = from; one < moves.length; one++) {
      const ratio = worthOf(moves, from, one, held, stakes);
      if (ratio <= highest) continue;
      highest = ratio;
      best = one;
    }
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
    let held = at.held;
    gather(at);
    for (let place = 0; place < moves.length; place++) {
      const { costs, setUp, errs, ends, of } = nextMove(place, held);
      spent += alive * (costs + setUpMinutes(setUp, held) * stakes.minute) + errs;
      for (const { bit } of setUp) held |= bit;
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

/** p/C of a move; of one that has to be prepared for, with those that need no more than that and are worth more. */
function worthOf(
  moves: readonly Move[],
  from: number,
  place: number,
  held: number,
  { minute }: Stakes,
): number {
  const { mass, costs, setUp } = moves[place] as Move;
  const missing = setUp.length ? setUpMinutes(setUp, held) : 0;
  if (!missing) return mass / costs;
  let [sum, spent] = [mass, costs + missing * minute];
  const prepared = setUp.reduce((bits, { bit }) => bits | bit, held);
  const mates = moves.filter(
    (one, at) => at >= from && at !== place && one.setUp.length && !setUpMinutes(one.setUp, prepared),
  );
  for (const mate of mates.sort((a, b) => b.mass / b.costs - a.mass / a.costs)) {
    if (mate.mass * spent <= sum * mate.costs) break;
    sum += mate.mass;
    spent += mate.costs;
  }
  return sum / spent;
}

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
  return {
    check,
    place,
    move: { mass: 0, costs, setUp: check.setUp, errs: 0, ends: check.repairs, of: untouched },
    vain,
    slow,
  };
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
  return { mass, costs, setUp: [], errs: 0, ends, of: pending };
}
