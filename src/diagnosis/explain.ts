import { type Belief, probabilities } from "./belief.ts";
import type { Model } from "./model.ts";

/** Why a check comes next, for the texts to say. Causes by id, the likelier first. */
export type Explanation = {
  /** The pair that the check tells apart best, weighed by how likely both are; null where it tells none apart. */
  splits: [string, string] | null;
};

/** Two causes count as told apart from this difference on, as the total variation distance, 0 to 1. */
const noticeable = 0.2;

/** Why this check is worth asking now: the two causes that it tells apart. */
export function explain(model: Model, belief: Belief, check: string): Explanation {
  const chances = probabilities(model, belief);
  const idOf = (cause: number) => model.causes[cause]?.id ?? "";
  const order = [...chances.keys()].sort((a, b) => (chances[b] ?? 0) - (chances[a] ?? 0));
  const outcomes = model.checks[model.checkAt.get(check) ?? -1]?.outcomes ?? [];
  const distance = (a: number, b: number) =>
    outcomes.reduce((sum, { chances: of }) => sum + Math.abs((of[a] ?? 0) - (of[b] ?? 0)), 0) / 2;
  let splits: [string, string] | null = null;
  let greatest = 0;
  for (const [rank, a] of order.entries())
    for (const b of order.slice(rank + 1)) {
      const apart = distance(a, b);
      const worth = apart * (chances[a] ?? 0) * (chances[b] ?? 0);
      if (apart < noticeable || worth <= greatest) continue;
      greatest = worth;
      splits = [idOf(a), idOf(b)];
    }
  return { splits };
}
