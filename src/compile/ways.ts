import type { ProofStep } from "../diagnosis/index.ts";
import type { Check, Condition, Flow } from "../guide/index.ts";
import { routesOf } from "./routes-of.ts";

/** True for a check that is the wait a remedy calls for: a move of another kind. */
export function isWaitForIce(check: Check | undefined): boolean {
  return Object.values(check?.turns ?? {}).some((turn) => turn.waits);
}

/**
 * The ways for a condition to come true, each a list of steps that are all needed; for the look-ahead only, the
 * chart itself tests the condition. What cannot be said in outcomes (not, unwaited, the opening) counts as true.
 */
export function waysOf(flow: Flow, condition: Condition): ProofStep[][] {
  if (typeof condition === "string" || "not" in condition) return [[]];
  if ("is" in condition) return waysOf(flow, flow.conditions[condition.is] ?? { any: [] });
  if ("any" in condition) return merge(condition.any.flatMap((one) => waysOf(flow, one)));
  if ("all" in condition)
    return condition.all.reduce<ProofStep[][]>(
      (before, one) => before.flatMap((steps) => waysOf(flow, one).flatMap((more) => join(steps, more))),
      [[]],
    );
  if ("done" in condition) {
    const outcomes = Object.keys(flow.checks[condition.done]?.outcomes ?? {});
    return [[{ check: condition.done, outcomes }]];
  }
  if ("found" in condition || "remedied" in condition) {
    const causes = "found" in condition ? condition.found : condition.remedied;
    return Object.values(flow.checks).flatMap((check) => {
      const outcomes = Object.entries(routesOf(flow, check)).flatMap(([name, { finds, fixes }]) =>
        causes.some((one) => ("found" in condition ? finds : fixes).includes(one)) ? [name] : [],
      );
      return outcomes.length ? [[{ check: check.id, outcomes }]] : [];
    });
  }
  const { turn, is } = "answered" in condition ? condition.answered : condition.verdict;
  const [check = "", name = ""] = turn.split(".");
  const rule = flow.checks[check];
  if (!rule || isWaitForIce(rule)) return [[]];
  const outcomes = Object.entries(routesOf(flow, rule)).flatMap(([outcome, { passes }]) =>
    is.some((answer) => passes.includes(`${name}.${answer}`)) ? [outcome] : [],
  );
  return outcomes.length ? [[{ check, outcomes }]] : [];
}

/** Ways of one step at the same check are one way with more outcomes. */
function merge(all: readonly ProofStep[][]): ProofStep[][] {
  const single = new Map<string, Set<string>>();
  const longer: ProofStep[][] = [];
  for (const steps of all) {
    const [only] = steps;
    if (!only || steps.length > 1) longer.push(steps);
    else single.set(only.check, new Set([...(single.get(only.check) ?? []), ...only.outcomes]));
  }
  return [...longer, ...[...single].map(([check, outcomes]) => [{ check, outcomes: [...outcomes] }])];
}

/** Both lists of steps together; none where they ask different things of one check. */
function join(some: readonly ProofStep[], others: readonly ProofStep[]): ProofStep[][] {
  const steps = new Map(some.map((step) => [step.check, step]));
  for (const { check, outcomes } of others) {
    const before = steps.get(check);
    const both = before ? outcomes.filter((one) => before.outcomes.includes(one)) : outcomes;
    if (!both.length) return [];
    steps.set(check, { check, outcomes: both });
  }
  return [[...steps.values()]];
}
