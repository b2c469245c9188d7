import { type Condition, fold, type Statement, spellOut } from "../condition/index.ts";
import type { ProofStep } from "../diagnosis/index.ts";
import type { Flow } from "../guide/index.ts";
import { routesOf } from "./routes-of.ts";
import { isWaitForIce } from "./wait-for-ice.ts";

/**
 * The ways for a condition to come true, each a list of steps that are all needed; for the look-ahead only, the
 * chart itself tests the condition. What cannot be said in outcomes (not, unwaited, the opening) counts as true.
 */
export function proofStepsOf(flow: Flow, condition: Condition): ProofStep[][] {
  const ways = {
    statement: (one: Statement) => stepsTo(flow, one),
    all: (parts: ProofStep[][][]) =>
      parts.reduce<ProofStep[][]>(
        (before, part) => before.flatMap((steps) => part.flatMap((more) => join(steps, more))),
        [[]],
      ),
    any: (parts: ProofStep[][][]) => merge(parts.flat()),
    not: () => [[]],
  };
  return fold(condition, spellOut(ways, flow.conditions));
}

function stepsTo(flow: Flow, { type, params }: Statement): ProofStep[][] {
  switch (type) {
    case "done":
      return [[{ check: params.check, outcomes: Object.keys(flow.checks[params.check]?.outcomes ?? {}) }]];
    case "found":
    case "remedied":
      return Object.values(flow.checks).flatMap((check) => {
        const outcomes = Object.entries(routesOf(flow, check)).flatMap(([name, { finds, fixes }]) =>
          params.causes.some((one) => (type === "found" ? finds : fixes).includes(one)) ? [name] : [],
        );
        return outcomes.length ? [[{ check: check.id, outcomes }]] : [];
      });
    case "answered":
    case "verdict": {
      const [check = "", name = ""] = params.turn.split(".");
      const rule = flow.checks[check];
      if (!rule || isWaitForIce(rule)) return [[]];
      const outcomes = Object.entries(routesOf(flow, rule)).flatMap(([outcome, { passes }]) =>
        params.is.some((answer) => passes.includes(`${name}.${answer}`)) ? [outcome] : [],
      );
      return outcomes.length ? [[{ check, outcomes }]] : [];
    }
    default:
      return [[]];
  }
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
