import type { CheckInput, ModelInput, ProofStep } from "../diagnosis/index.ts";
import type { Check, Flow } from "../guide/index.ts";
import { isPossible, type OpeningAnswers } from "./is-possible.ts";
import { proofStepsOf } from "./proof-steps.ts";
import { routesOf } from "./routes-of.ts";
import { setUpOf } from "./set-up.ts";
import { isWaitForIce } from "./wait-for-ice.ts";

/**
 * The causes and checks of one scenario after an opening: its causes with a prior, less those that no check left could
 * find (no filter clogs in a machine with a tank), and its checks.
 */
export function amongAfter(flow: Flow, scenario: string, opening: OpeningAnswers) {
  const checks = checksOf(flow, scenario, opening);
  const all = createInput(flow, scenario, checks);
  const fixed = new Set(
    all.checks.flatMap(({ outcomes }) => Object.values(outcomes).flatMap(({ fixes = [] }) => fixes)),
  );
  const causes = all.causes.filter(({ id, remedy, proofs = [] }) => {
    const provable = flow.causes[id]?.proof !== undefined;
    return fixed.has(id) || proofs.length > 0 || (remedy === "professional" && !provable);
  });
  return { causes: causes.map(({ id }) => id), checks };
}

/** What a scenario knows, with the checks given. @throws Error where there is no such scenario or check */
export function createInput(flow: Flow, scenario: string, checks: readonly string[]): ModelInput {
  const rule = flow.scenarios[scenario];
  if (!rule) throw new Error(`There is no scenario "${scenario}"`);
  const rivals = Object.keys(rule.priors).flatMap((id) => {
    const cause = flow.causes[id];
    return cause ? [{ id, ...cause }] : [];
  });
  const among = new Set(checks);
  // A cause may be proved by a check that only other scenarios have.
  const possible = (ways: readonly ProofStep[][] = []) =>
    ways.filter((steps) => steps.length > 0 && steps.every(({ check }) => among.has(check)));
  return {
    words: flow.words,
    causes: rivals.map(({ id, remedy, part, claim }) => {
      const prior = rule.priors[id] ?? "";
      const fitting = flow.parts[part ?? ""]?.fitting;
      return { id, prior, remedy, part, claim, fitting, proofs: possible(proofsOf(flow, id)) };
    }),
    checks: checks.map((id) => ({ ...experimentOf(flow, id), needs: possible(needsOf(flow, scenario, id)) })),
  };
}

/**
 * The checks of a scenario in the trade's order, without the waits for ice: those are moves of another kind.
 * @param opening leaves out what it rules out; null leaves out nothing
 */
export function checksOf(flow: Flow, scenario: string, opening: OpeningAnswers | null): string[] {
  const entries = flow.scenarios[scenario]?.checks ?? [];
  const left = entries.filter(({ when }) => !when || !opening || isPossible(when, opening, flow.conditions));
  return [...new Set(left.map(({ check }) => check))].filter((id) => !isWaitForIce(flow.checks[id]));
}

/** The ways to prove a cause. */
function proofsOf(flow: Flow, id: string): ProofStep[][] {
  const proof = flow.causes[id]?.proof;
  return proof ? proofStepsOf(flow, proof) : [];
}

/** The ways for a check to be allowed; none where it always is. */
function needsOf(flow: Flow, scenario: string, id: string): ProofStep[][] {
  const entries = (flow.scenarios[scenario]?.checks ?? []).filter(({ check }) => check === id);
  const free = entries.some(({ when }) => !when);
  return free ? [] : entries.flatMap(({ when }) => (when ? proofStepsOf(flow, when) : []));
}

function experimentOf(flow: Flow, id: string): CheckInput {
  const check: Check | undefined = flow.checks[id];
  if (!check) throw new Error(`There is no check "${id}"`);
  const routes = routesOf(flow, check);
  const outcomes = Object.entries(check.outcomes ?? {}).map(([name, { says }]) => {
    const { fixes, hours } = routes[name] ?? {};
    return [name, { says, ...(fixes?.length ? { fixes } : {}), ...(hours ? { hours } : {}) }] as const;
  });
  return {
    id,
    group: check.measures,
    ...setUpOf(flow, check, check.minutes),
    outcomes: Object.fromEntries(outcomes),
  };
}
