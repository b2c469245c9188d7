import type { Model } from "./model.ts";

/**
 * What has been learnt, as plain JSON. Probabilities are worked out from it in the model's own order, so the order
 * of the answers cannot matter, not even in the last digit.
 */
export type Belief = {
  /** The outcome that counts for each group of checks, by the group's number. */
  counted: Readonly<Record<number, { check: string; outcome: string }>>;
  /** The latest outcome of each check. */
  shown: Readonly<Record<string, string>>;
  /** For causes put right without the ice coming back: the chance that such a fix fails, over all tries. */
  failed: Readonly<Record<string, number>>;
};

/** Keeps every probability off 0 and 1 by more than rounding: people misread, and so may we. */
const margin = 1e-15;

/** The belief before the first answer. */
export function createBelief(): Belief {
  return { counted: {}, shown: {}, failed: {} };
}

/**
 * The belief after a check showed an outcome. Within a group the latest counts. A check or an outcome that the model
 * does not have ('not sure', 'could not') says nothing and changes nothing.
 */
export function updateBelief(model: Model, belief: Belief, check: string, outcome: string): Belief {
  const known = model.checks[model.checkAt.get(check) ?? -1];
  if (!known?.outcomes.some(({ id }) => id === outcome)) return belief;
  return {
    ...belief,
    counted: { ...belief.counted, [known.group]: { check, outcome } },
    shown: { ...belief.shown, [check]: outcome },
  };
}

/**
 * The belief after a cause was put right and the ice stayed away: pᵢ′ = pᵢ(1−s)/(1−pᵢs), the others divided by the
 * same. The evidence stays: a second fault may be behind it.
 *
 * @param success s, the chance that such a fix brings the ice back where this was the cause; 0 ≤ s < 1
 */
export function failedFix(belief: Belief, cause: string, success: number): Belief {
  if (!(success >= 0 && success < 1))
    throw new RangeError(`The success of a fix is ${success}, not within 0 and 1`);
  const factor = (belief.failed[cause] ?? 1) * (1 - success);
  return { ...belief, failed: { ...belief.failed, [cause]: Math.max(factor, Number.MIN_VALUE) } };
}

/**
 * How likely each cause is, by its place in the model, by Bayes' rule with one main cause. Each is above 0 and
 * below 1; together they make 1, but for rounding.
 */
export function probabilities(model: Model, belief: Belief): Float64Array {
  const logs = model.causes.map(
    ({ id }, cause) => Math.log(model.priors[cause] ?? 0) + Math.log(belief.failed[id] ?? 1),
  );
  for (const check of model.checks) {
    const counted = belief.counted[check.group];
    const outcome = counted?.check === check.id && check.outcomes.find(({ id }) => id === counted.outcome);
    if (!outcome) continue;
    for (let cause = 0; cause < logs.length; cause++)
      logs[cause] = (logs[cause] ?? 0) + Math.log(outcome.chances[cause] ?? 0);
  }
  // Relative to the greatest: a long session's product would vanish.
  const greatest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - greatest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return Float64Array.from(weights, (weight) => Math.min(Math.max(weight / total, margin), 1 - margin));
}
