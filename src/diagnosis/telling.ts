import { type Belief, probabilities } from "./belief.ts";
import type { Model } from "./model.ts";

/**
 * The check among those given that tells most, for its minutes, of causes that need no professional: how far what they
 * show lies from what is expected (total variation), weighed by how likely they are. Null where none tells `least`.
 */
export function mostTelling(
  model: Model,
  belief: Belief,
  among: readonly string[],
  least: number,
): string | null {
  const chances = probabilities(model, belief);
  let best: { id: string; worth: number } | null = null;
  for (const id of among) {
    const check = model.checks[model.checkAt.get(id) ?? -1];
    if (!check) continue;
    let told = 0;
    for (const { chances: shown } of check.outcomes) {
      let expected = 0;
      for (let cause = 0; cause < chances.length; cause++)
        expected += (chances[cause] as number) * (shown[cause] as number);
      for (let cause = 0; cause < chances.length; cause++)
        if (model.causes[cause]?.remedy !== "professional")
          told += ((chances[cause] as number) * Math.abs((shown[cause] as number) - expected)) / 2;
    }
    const worth = told / check.minutes;
    if (told >= least && (!best || worth > best.worth)) best = { id, worth };
  }
  return best?.id ?? null;
}
