import type { Belief } from "../../src/diagnosis/belief.ts";
import { costOfAsking, costOfStopping, isOpen, leaveOf } from "../../src/diagnosis/leave.ts";
import type { Check, Model } from "../../src/diagnosis/model.ts";
import {
  ask,
  costOfWaiting,
  type Position,
  pending,
  positionOf,
  type Stakes,
  type State,
  wait,
} from "../../src/diagnosis/position.ts";

/**
 * The least expected cost to an ending that any way of asking can reach: every order, every answer, every stop, by
 * exact search (expectimax). The bound against which a quick choice is measured; grows with the product of all
 * outcomes, so for small models only.
 *
 * @param most positions looked at before giving up
 * @throws RangeError where the model is too large for that
 */
export function exactValue(
  model: Model,
  belief: Belief,
  allowed: readonly string[],
  state: State,
  stakes: Stakes,
  most = 1_000_000,
): number {
  const leave = leaveOf(model, allowed, state);
  const known = new Map<string, number>();
  const worthOf = (at: Position): number => {
    const key = `${at.shown.join()} ${at.counted.join()} ${at.mended.join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    if (known.size >= most) throw new RangeError(`More than ${most} positions: too many for an exact search`);
    let least = costOfStopping(model, at, stakes, leave);
    if (state.mayWait && at.mended.includes(pending)) {
      const { chance, next } = wait(at, stakes.success);
      least = Math.min(least, costOfWaiting(stakes) + (1 - chance) * worthOf(next));
    }
    for (const [place, check] of model.checks.entries())
      if (check.outcomes.length && isOpen(check, place, at, leave))
        least = Math.min(least, asked(at, place, check));
    known.set(key, least);
    return least;
  };
  const asked = (at: Position, place: number, check: Check): number => {
    let cost = costOfAsking(check, at, stakes);
    for (let outcome = 0; outcome < check.outcomes.length; outcome++) {
      const { chance, next } = ask(model, at, place, outcome, stakes);
      cost += chance * worthOf(next);
    }
    return cost;
  };
  return worthOf(positionOf(model, belief, state));
}
