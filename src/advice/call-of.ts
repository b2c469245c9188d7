import type { Call, FlowSlice } from "../chart/index.ts";
import { type Belief, type Model, probabilities } from "../diagnosis/index.ts";

/**
 * What an ending names: so many causes at most, each with this belief at the least; and a trade where it mends this
 * share of what some trade has to mend.
 */
export type Naming = { most: number; least: number; trade: number };

/**
 * What to tell a professional: the likeliest causes, one a part, and the trade that mends most of what needs one: a filter
 * that is just as likely is fitted without anybody.
 * @param fixed causes that were put right and not waited for: they are not what somebody comes for
 */
export function callOf(
  model: Model,
  belief: Belief,
  causes: FlowSlice["causes"],
  fixed: readonly string[],
  { most, least, trade }: Naming,
): Call {
  const chances = probabilities(model, belief);
  const byPart = new Map<string, { id: string; chance: number; greatest: number }>();
  const byTrade = new Map<string, number>();
  for (const [place, { id, part }] of model.causes.entries()) {
    if (fixed.includes(id)) continue;
    const chance = chances[place] as number;
    const known = byPart.get(part ?? id) ?? { id, chance: 0, greatest: 0 };
    known.chance += chance;
    if (chance > known.greatest) Object.assign(known, { id, greatest: chance });
    byPart.set(part ?? id, known);
    const who = causes[id]?.who;
    if (who) byTrade.set(who, (byTrade.get(who) ?? 0) + chance);
  }
  const anyTrade = [...byTrade.values()].reduce((sum, chance) => sum + chance, 0);
  const likely = [...byPart.values()].sort((a, b) => b.chance - a.chance);
  return {
    likely: likely
      .filter(({ chance }) => chance >= least)
      .map(({ id }) => id)
      .slice(0, most),
    who: [...byTrade].find(([, chance]) => chance >= trade * anyTrade)?.[0] ?? null,
  };
}
