import {
  type Belief,
  type Choice,
  chooseNext,
  createBelief,
  failedFix,
  type Model,
  probabilities,
  type Stakes,
  type State,
  updateBelief,
} from "../../../src/diagnosis/index.ts";

export type Chooser = typeof chooseNext;

/** A session before its first check. */
export const atStart: State = { done: [], proven: [], due: [], fixed: [], mayWait: true };
export const allChecks = (model: Model) => model.checks.map(({ id }) => id);

/** The expected cost of a way of choosing, over everything that can happen: an average without chance. */
export function costOf(model: Model, stakes: Stakes, choose: Chooser = chooseNext): number {
  const known = new Map<string, number>();
  const from = (belief: Belief, state: State): number => {
    const key = JSON.stringify([
      Object.entries(belief.shown).sort(),
      Object.entries(belief.counted),
      Object.entries(belief.failed).sort(),
      [...state.fixed].sort(),
    ]);
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = step(belief, state);
    known.set(key, value);
    return value;
  };
  const step = (belief: Belief, state: State): number => {
    const allowed = allChecks(model).filter((id) => !state.done.includes(id));
    const choice = choose(model, belief, allowed, state, stakes);
    const chances = probabilities(model, belief);
    if ("stop" in choice) return costOfEnding(model, chances, belief, choice, stakes);
    if ("wait" in choice) {
      let came = 0;
      let after = belief;
      for (const cause of state.fixed) {
        came += (chances[model.causeAt.get(cause) ?? -1] ?? 0) * stakes.success;
        after = failedFix(after, cause, stakes.success);
      }
      const cost = stakes.waitHours * stakes.hour + stakes.waitMinutes * stakes.minute;
      return cost + (1 - came) * from(after, { ...state, fixed: [] });
    }
    const check = model.checks[model.checkAt.get(choice.next) ?? -1];
    if (!check) throw new Error(`"${choice.next}" is no check`);
    let cost = check.minutes * stakes.minute;
    for (const outcome of check.outcomes) {
      const chance = chances.reduce((sum, one, cause) => sum + one * (outcome.chances[cause] ?? 0), 0);
      const after = updateBelief(model, belief, check.id, outcome.id);
      const fixes = outcome.fixes.map((cause) => model.causes[cause]?.id ?? "");
      const fixed = [...new Set([...state.fixed, ...fixes.filter((one) => !(one in after.failed))])];
      const next = { ...state, done: [...state.done, check.id], fixed, ...provedBy(model, after) };
      cost += chance * (outcome.hours * stakes.hour + from(after, next));
    }
    return cost;
  };
  return from(createBelief(), atStart);
}

/** The causes whose proof is recorded, by the steps of the model's own proofs. */
function provedBy(model: Model, { shown }: Belief): { proven: string[]; due: string[] } {
  const recorded = model.causes.filter(
    ({ proofs, remedy }) =>
      remedy === "part" &&
      proofs.some((steps) =>
        steps.every(({ check, outcomes }) => {
          const rule = model.checks[check];
          const place = rule?.outcomes.findIndex(({ id }) => id === shown[rule.id]) ?? -1;
          return outcomes.includes(place);
        }),
      ),
  );
  const ids = (claim: string) => recorded.filter((cause) => cause.claim === claim).map(({ id }) => id);
  return { proven: ids("proved"), due: ids("due") };
}

function costOfEnding(
  model: Model,
  chances: Float64Array,
  belief: Belief,
  choice: Extract<Choice, { stop: string }>,
  stakes: Stakes,
): number {
  const sold = choice.stop === "part" ? model.causes.find(({ id }) => id === choice.cause) : undefined;
  return model.causes.reduce((sum, { id, remedy, part, fitting }, place) => {
    if (sold && part === sold.part) return sum;
    const needless = remedy !== "professional" && !(id in belief.failed);
    const call = !needless ? 0 : part && fitting === "professional" ? stakes.secondVisit : stakes.callOut;
    const vain =
      choice.stop !== "part"
        ? 0
        : choice.due
          ? stakes.waitHours * stakes.hour + stakes.waitMinutes
          : stakes.wrongPart;
    return sum + (chances[place] ?? 0) * (call + vain);
  }, 0);
}
