import type { CheckInput, ModelInput, ProofStep } from "../diagnosis/index.ts";
import { type CauseRule, type Check, type Flow, limitOf } from "../guide/index.ts";
import { isPossible, type OpeningAnswers } from "./is-possible.ts";
import { likelihoodsOf } from "./likelihoods.ts";
import { proofStepsOf } from "./proof-steps.ts";
import { routesOf } from "./routes-of.ts";
import { setUpOf } from "./set-up.ts";
import { causesOf, sharesOf } from "./shares.ts";
import { isWaitForIce } from "./wait-for-ice.ts";

/** The causes of one scenario after an opening with their weights, and its checks. */
export function amongAfter(flow: Flow, scenario: string, opening: OpeningAnswers) {
  const shares = sharesOf(flow, scenario, opening);
  const causes = causesOf(flow, scenario).filter((id) => shares[id]);
  return {
    causes,
    weights: causes.map((id) => short(shares[id] ?? 0)),
    checks: checksOf(flow, scenario, opening),
  };
}

/** What a scenario knows, with the checks given. @throws Error where there is no such scenario or check */
export function createInput(flow: Flow, scenario: string, checks: readonly string[]): ModelInput {
  const among = new Set(checks);
  // A cause may be proved by a check that only other scenarios have.
  const possible = (ways: readonly ProofStep[][] = []) =>
    ways.filter((steps) => steps.length > 0 && steps.every(({ check }) => among.has(check)));
  const shares = sharesOf(flow, scenario, null);
  const causes = causesOf(flow, scenario);
  return {
    causes: causes.map((id) => {
      const { remedy, part, claim } = flow.causes[id] as CauseRule;
      const fitting = flow.parts[part ?? ""]?.fitting;
      const weight = short(shares[id] ?? limitOf(flow.limits, "negligible-share"));
      return { id, weight, remedy, part, claim, fitting, proofs: possible(proofsOf(flow, id)) };
    }),
    checks: checks.map((id) => ({
      ...experimentOf(flow, scenario, id, causes),
      needs: possible(needsOf(flow, scenario, id)),
    })),
  };
}

/** In homes of 2,000: nobody knows shares better than that. */
const short = (share: number) => Math.max(1, Math.round(2000 * share));

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

function experimentOf(flow: Flow, scenario: string, id: string, causes: readonly string[]): CheckInput {
  const check: Check | undefined = flow.checks[id];
  if (!check) throw new Error(`There is no check "${id}"`);
  const routes = routesOf(flow, check);
  const likelihoods = likelihoodsOf(flow, scenario, id, causes);
  const outcomes = Object.keys(check.outcomes ?? {}).map((name, at) => {
    const { fixes, hours } = routes[name] ?? {};
    const says = Object.fromEntries(
      causes.map((cause, place) => [cause, onGrid(likelihoods[at]?.[place] ?? 0)]),
    );
    return [name, { says, ...(fixes?.length ? { fixes } : {}), ...(hours ? { hours } : {}) }] as const;
  });
  // Nobody fetches a jug before looking at a switch.
  const minutes = check.minutes + check.tools.length * limitOf(flow.limits, "cost-fetch");
  return {
    id,
    group: check.measures,
    ...setUpOf(flow, check, minutes),
    outcomes: Object.fromEntries(outcomes),
  };
}

/** The ends of the grid of likelihoods and its step, as log odds: a phone's tables take some ninety numbers. */
const grid = { most: 6.2, step: 0.28 };

/** The next likelihood on the grid: the odds are off by 15 % at most, and none is 0 or 1. */
export function onGrid(chance: number): number {
  const odds = Math.log(chance / (1 - chance));
  const place = Math.round(Math.min(Math.max(odds, -grid.most), grid.most) / grid.step);
  return Number((1 / (1 + Math.exp(-place * grid.step))).toPrecision(4));
}
