import type { ChartContext } from "../chart/index.ts";
import { explain, mostTelling } from "../diagnosis/index.ts";
import { learntFrom } from "./learnt-from.ts";
import { modelAfter } from "./model-after.ts";
import { movesAt } from "./moves.ts";
import type { Subject } from "./subject.ts";

/** A check that is allowed now: about how many minutes it takes, and the two causes that it tells apart best, if any. */
export type Ranked = { check: string; minutes: number; splits: [string, string] | null };

/**
 * What could be asked next, for a person who knows more than the diagnosis does: what is allowed, second looks and waits
 * apart, the more telling for its minutes first.
 * @param first the check that the adviser itself would choose, which leads where it is allowed
 */
export function rankMoves(subject: Subject, memory: ChartContext, first: string | null): Ranked[] {
  const { diagnosis } = subject;
  const model = modelAfter(diagnosis, memory);
  const { belief } = learntFrom(diagnosis, model, memory);
  let left = movesAt(subject, memory).flatMap(({ check, isAgain, waits }) =>
    isAgain || waits ? [] : [check],
  );
  const ranked: Ranked[] = [];
  while (left.length > 0) {
    const next = first !== null && left.includes(first) ? first : mostTelling(model, belief, left, 0);
    if (next === null) break;
    left = left.filter((check) => check !== next);
    const { minutes = 0 } = model.checks[model.checkAt.get(next) ?? -1] ?? {};
    ranked.push({ check: next, minutes, splits: explain(model, belief, next).splits });
  }
  return ranked;
}
