import {
  type CheckInput,
  createModel,
  type Model,
  type ModelInput,
  type ProofStep,
} from "../diagnosis/index.ts";
import type { Flow } from "../guide/index.ts";
import { groundworkOf } from "./groundwork.ts";
import { isPossible, type Opening } from "./is-possible.ts";
import { isWaitForIce } from "./wait-for-ice.ts";

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
  const { proofs, needs } = groundworkOf(flow);
  const among = new Set(checks);
  // A cause may be proved by a check that only other scenarios have.
  const possible = (ways: readonly ProofStep[][] = []) =>
    ways.filter((steps) => steps.length > 0 && steps.every(({ check }) => among.has(check)));
  return {
    words: flow.words,
    causes: rivals.map(({ id, remedy, part, claim }) => {
      const prior = rule.priors[id] ?? "";
      const fitting = flow.parts[part ?? ""]?.fitting;
      return { id, prior, remedy, part, claim, fitting, proofs: possible(proofs[id]) };
    }),
    checks: checks.map((id) => ({ ...experimentOf(flow, id), needs: possible(needs[scenario]?.[id]) })),
  };
}

/** The checks of a scenario in the trade's order, without the waits for ice: those are moves of another kind. */
export function checksOf(flow: Flow, scenario: string, opening: Opening): string[] {
  const entries = flow.scenarios[scenario]?.checks ?? [];
  const left = entries.filter(({ when }) => !when || isPossible(when, opening, flow.conditions));
  return [...new Set(left.map(({ check }) => check))].filter((id) => !isWaitForIce(flow.checks[id]));
}

function experimentOf(flow: Flow, id: string): CheckInput {
  const check = flow.checks[id];
  if (!check) throw new Error(`There is no check "${id}"`);
  const outcomes = Object.entries(check.outcomes ?? {}).map(([name, { says }]) => {
    return [name, { says, ...groundworkOf(flow).routes[id]?.[name] }] as const;
  });
  return { id, group: check.measures, minutes: check.minutes, outcomes: Object.fromEntries(outcomes) };
}
