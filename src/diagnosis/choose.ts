import type { Belief } from "./belief.ts";
import { costOfAsking, isDue, isOpen, type Leave, leaveOf } from "./leave.ts";
import type { Check, Model } from "./model.ts";
import { createPlan } from "./plan.ts";
import {
  ask,
  costOfCalling,
  costOfSelling,
  costOfWaiting,
  type Position,
  pending,
  positionOf,
  type Stakes,
  type State,
  wait,
} from "./position.ts";
import { finish, type Steps } from "./steps.ts";

/** What to do next, and what it is expected to cost from here to the end, in the unit of the stakes. */
export type Choice = { cost: number } & (
  | { next: string }
  | { wait: true }
  | { stop: "part"; cause: string; due: boolean }
  | { stop: "professional" }
);

/** How many of the best options are looked at two checks deep, and how many may follow each. More did not pay. */
const width = 3;
const followed = 4;

/**
 * The next thing to do, by the least expected cost to the right ending: a check among those allowed, the wait for
 * ice, a part, or a professional. A part is only ever chosen where `state.proven` has its cause and the belief in
 * what that part puts right reaches `stakes.belief`. Equal costs leave the order of `allowed` in force.
 *
 * Deterministic and quick: two checks deep for the most promising, below that a whole plan in p/C order.
 */
export function chooseNext(
  model: Model,
  belief: Belief,
  allowed: readonly string[],
  state: State,
  stakes: Stakes,
): Choice {
  return finish(choosing(model, belief, allowed, state, stakes));
}

/** The same in steps. */
export function* choosing(
  model: Model,
  belief: Belief,
  allowed: readonly string[],
  state: State,
  stakes: Stakes,
): Steps<Choice> {
  const at = positionOf(model, belief, state);
  const leave = leaveOf(model, allowed, state);
  const look = createLook(model, stakes, leave);
  const places: Option["place"][] = allowed.flatMap((id) => model.checkAt.get(id) ?? []);
  if (state.mayWait && at.mended.includes(pending)) places.push(null);
  const options: Option[] = [];
  for (const place of places) {
    options.push({ place, cost: look.cost(at, place, look.plan) });
    yield;
  }
  const ranked = [...options].sort((a, b) => rounded(a.cost) - rounded(b.cost));
  const deep = (next: Position) => look.best(next, ranked.slice(0, followed));
  const deepest = ranked.slice(0, width);
  for (const option of deepest) {
    const worths: number[] = [];
    for (const next of look.after(at, option.place)) {
      worths.push(deep(next));
      yield;
    }
    // They are asked for in the same order.
    option.cost = look.cost(at, option.place, () => worths.shift() as number);
  }
  let choice = stopNow(model, at, stakes, leave);
  // In the order of `allowed`: the first of equals stands.
  for (const option of options) {
    if (!deepest.includes(option) || rounded(option.cost) >= rounded(choice.cost)) continue;
    const { place, cost } = option;
    choice = place === null ? { wait: true, cost } : { next: (model.checks[place] as Check).id, cost };
  }
  return choice;
}

/** A check, or the wait where there is none. */
type Option = { place: number | null; cost: number };

/** Costs are compared to six digits: rounding must not decide where the trade's order could. */
const rounded = (cost: number) => Number(cost.toPrecision(6));

/** The ending that is cheapest if the session stops here; a part only with proof and belief. */
function stopNow(model: Model, at: Position, stakes: Stakes, { proven }: Leave): Choice {
  let choice: Choice = { stop: "professional", cost: costOfCalling(model, at.chances, at.mended, stakes) };
  let greatest = 0;
  for (const [cause, { id, remedy }] of model.causes.entries()) {
    if (remedy !== "part" || !proven[cause]) continue;
    const due = proven[cause] === isDue;
    const cost = costOfSelling(model, at, cause, due, stakes);
    const chance = at.chances[cause] as number;
    if (cost > choice.cost || (cost === choice.cost && chance <= greatest)) continue;
    greatest = chance;
    choice = { stop: "part", cause: id, due, cost };
  }
  return choice;
}

type Worth = (at: Position) => number;

/** The expected costs of one step followed by `then`, in any position that can be imagined from here. */
function createLook(model: Model, stakes: Stakes, leave: Leave) {
  const plan: Worth = createPlan(model, stakes, leave);
  const asked = (at: Position, place: number, then: Worth): number => {
    const check = model.checks[place] as Check;
    let cost = costOfAsking(check, at, stakes);
    if (!check.outcomes.length) return cost + then(at);
    for (let outcome = 0; outcome < check.outcomes.length; outcome++) {
      const { chance, next } = ask(model, at, place, outcome, stakes);
      cost += chance * then(next);
    }
    return cost;
  };
  const cost = (at: Position, place: Option["place"], then: Worth): number => {
    if (place !== null) return asked(at, place, then);
    const { chance, next } = wait(at, stakes.success);
    return costOfWaiting(stakes) + (1 - chance) * then(next);
  };
  /** The positions that one step can lead to. */
  const after = (at: Position, place: Option["place"]): Position[] => {
    if (place === null) return [wait(at, stakes.success).next];
    const { outcomes } = model.checks[place] as Check;
    return outcomes.length ? outcomes.map((_, outcome) => ask(model, at, place, outcome, stakes).next) : [at];
  };
  /** The best of stopping, a plan, and one more check or wait with a plan behind it. */
  const best = (at: Position, options: readonly Option[]): number => {
    let least = plan(at);
    if (at.mended.includes(pending)) least = Math.min(least, cost(at, null, plan));
    for (const { place } of options) {
      if (place === null || !isOpen(model.checks[place] as Check, place, at, leave)) continue;
      least = Math.min(least, asked(at, place, plan));
    }
    return least;
  };
  return { plan, cost, after, best };
}
