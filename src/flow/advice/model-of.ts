import {
  type CheckInput,
  createModel,
  type Model,
  type ModelInput,
  type ProofStep,
} from "../../diagnosis/index.ts";
import type { Check, Condition, Flow } from "../flow.ts";
import { isPossible, type Opening } from "./is-possible.ts";
import { routesOf } from "./routes-of.ts";

/**
 * The model of one scenario after the opening: its causes with a prior, less those that no check left could find
 * (no filter clogs in a machine with a tank), and its checks.
 */
export function modelOf(flow: Flow, scenario: string, opening: Opening): Model {
  const checks = checksOf(flow, scenario, opening);
  const all = createInput(flow, scenario, checks);
  const fixed = new Set(
    all.checks.flatMap(({ outcomes }) => Object.values(outcomes).flatMap(({ fixes = [] }) => fixes)),
  );
  const causes = all.causes.filter(({ id, remedy, proofs = [] }) => {
    const provable = flow.causes[id]?.proof !== undefined;
    return fixed.has(id) || proofs.length > 0 || (remedy === "professional" && !provable);
  });
  return createModel({ ...all, causes });
}

/** What a scenario knows, with the checks given. @throws Error where there is no such scenario or check */
export function createInput(flow: Flow, scenario: string, checks: readonly string[]): ModelInput {
  const rule = flow.scenarios[scenario];
  if (!rule) throw new Error(`There is no scenario "${scenario}"`);
  const rivals = Object.keys(rule.priors).flatMap((id) => {
    const cause = flow.causes[id];
    return cause ? [{ id, ...cause }] : [];
  });
  // A cause may be proved by a check that only other scenarios have.
  const possible = (condition: Condition) =>
    ways(flow, condition).filter((steps) => steps.every(({ check }) => checks.includes(check)));
  return {
    words: flow.words,
    causes: rivals.map(({ id, remedy, part, claim, proof }) => {
      const proofs = proof ? possible(proof).filter((steps) => steps.length > 0) : [];
      const prior = rule.priors[id] ?? "";
      return { id, prior, remedy, part, claim, fitting: flow.parts[part ?? ""]?.fitting, proofs };
    }),
    checks: checks.map((id) => {
      const entries = rule.checks.filter((entry) => entry.check === id);
      const free = entries.some((entry) => !entry.when);
      const needs = free ? [] : entries.flatMap((entry) => (entry.when ? possible(entry.when) : []));
      return { ...experimentOf(flow, id), needs: needs.filter((steps) => steps.length > 0) };
    }),
  };
}

/** The checks of a scenario in the trade's order, without the waits for ice: those are moves of another kind. */
export function checksOf(flow: Flow, scenario: string, opening: Opening): string[] {
  const entries = flow.scenarios[scenario]?.checks ?? [];
  const left = entries.filter(({ when }) => !when || isPossible(when, opening, flow.conditions));
  return [...new Set(left.map(({ check }) => check))].filter((id) => !isWaitForIce(flow.checks[id]));
}

export function isWaitForIce(check: Check | undefined): boolean {
  return Object.values(check?.turns ?? {}).some((turn) => turn.waits);
}

function experimentOf(flow: Flow, id: string): CheckInput {
  const check = flow.checks[id];
  if (!check) throw new Error(`There is no check "${id}"`);
  const outcomes = Object.entries(check.outcomes ?? {}).map(([name, { says }]) => {
    const route = routesOf(flow, check)[name];
    return [name, { says, fixes: route?.fixes, hours: route?.hours }] as const;
  });
  return { id, group: check.measures, minutes: check.minutes, outcomes: Object.fromEntries(outcomes) };
}

/**
 * The ways for a condition to come true, each a list of steps that are all needed; for the look-ahead only, the
 * chart itself tests the condition. What cannot be said in outcomes (not, unwaited, the opening) counts as true.
 */
function ways(flow: Flow, condition: Condition): ProofStep[][] {
  if (typeof condition === "string" || "not" in condition) return [[]];
  if ("is" in condition) return ways(flow, flow.conditions[condition.is] ?? { any: [] });
  if ("any" in condition) return merge(condition.any.flatMap((one) => ways(flow, one)));
  if ("all" in condition)
    return condition.all.reduce<ProofStep[][]>(
      (before, one) => before.flatMap((steps) => ways(flow, one).flatMap((more) => join(steps, more))),
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
