import { costOfLooking, isProven, type Leave } from "./leave.ts";
import type { Check, Model, SetUp, Step } from "./model.ts";
import { type Position, type Stakes, setUpMinutes, unasked, untouched } from "./position.ts";

/** Proofs are long: causes less likely than this are not worth setting out for. */
const unlikely = 0.01;

/**
 * Something that may end the search. `ends`: the share of a cause's chance that it ends, for causes whose state of
 * repair is `of`; `costs`: in trying, with all prepared; `setUp`: what has to be for it; `errs`: in ending wrongly; `mass`:
 * the chance that it ends.
 */
export type Move = {
  mass: number;
  costs: number;
  setUp: readonly SetUp[];
  errs: number;
  ends: readonly { cause: number; chance: number }[];
  of: number;
};

type Way = { cause: number; moveFrom: (at: Position) => Move | null };

/** For each cause that a part puts right: what the cheapest of its proofs still lacks, as one move. */
export function proofWays(model: Model, stakes: Stakes, leave: Leave): Way[] {
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
      let highest = 0;
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
        const ratio = right / (rest.costs + setUpMinutes(rest.setUp, at.held) * stakes.minute);
        if (!best || ratio > highest) {
          highest = ratio;
          best = {
            mass: right,
            costs: rest.costs,
            setUp: rest.setUp,
            errs: wrong * stakes.wrongPart,
            ends: mates.map((one) => ({ cause: one, chance: accepts[one] as number })),
            of: untouched,
          };
        }
      }
      return best;
    };
    return [{ cause, moveFrom }];
  });
}

/** What is left of a proof: what it costs, and P(all its steps are accepted | cause). */
type Rest = { costs: number; setUp: readonly SetUp[]; accepts: Float64Array };

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
  const setUp = new Map<number, SetUp>();
  for (const step of steps) {
    const shown = at.shown[step.check] as number;
    if (step.outcomes.includes(shown)) continue;
    const check = model.checks[step.check] as Check;
    if (shown !== unasked || !(leave.allowed[step.check] || check.needs.length)) return null;
    costs += costOfLooking(check, at, stakes);
    for (const one of check.setUp) setUp.set(one.bit, one);
    for (let cause = 0; cause < accepts.length; cause++)
      accepts[cause] = (accepts[cause] as number) * (step.accepts[cause] as number);
  }
  return { costs, setUp: [...setUp.values()], accepts };
}
