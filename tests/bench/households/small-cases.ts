import { checksOf, createInput } from "../../../src/compile/model-of.ts";
import {
  createBelief,
  createModel,
  type Model,
  type ModelInput,
  type Stakes,
} from "../../../src/diagnosis/index.ts";
import { exactValue } from "../../diagnosis/exact.ts";
import { allChecks, atStart, type Chooser, costOf } from "./expected-cost.ts";
import type { Scene } from "./scene.ts";

/** How large a case may be for an exact search. */
const mostCauses = 8;
const mostChecks = 7;

/** A scenario cut down to some of its causes and the checks that find them, small enough for an exact search. */
export function smallCase({ flow, scenario, opening, model }: Scene, from: number): Model {
  const input = createInput(flow, scenario, checksOf(flow, scenario, opening));
  const ids = [...model.causes.keys()].sort((a, b) => (model.priors[b] ?? 0) - (model.priors[a] ?? 0));
  const kept = ids.slice(from, from + mostCauses).map((place) => model.causes[place]?.id ?? "");
  const causes = input.causes.filter(({ id }) => kept.includes(id));
  const needed = new Set(causes.flatMap(({ proofs = [] }) => proofs[0]?.map(({ check }) => check) ?? []));
  const useful = input.checks.filter(
    ({ id, outcomes }) =>
      needed.has(id) ||
      Object.values(outcomes).some(({ fixes = [] }) => fixes.some((one) => kept.includes(one))),
  );
  const checks = useful
    .slice(0, mostChecks)
    .map((check): ModelInput["checks"][number] => ({ ...check, needs: [] }));
  const known = (steps: readonly { check: string }[]) =>
    steps.every(({ check }) => checks.some(({ id }) => id === check));
  return createModel({
    ...input,
    causes: causes.map((cause) => ({ ...cause, proofs: cause.proofs?.filter(known) })),
    checks,
  });
}

/** The least expected cost that any way of asking can reach. */
export function boundOf(model: Model, stakes: Stakes): number {
  return exactValue(model, createBelief(), allChecks(model), atStart, stakes);
}

/** Expected costs over the small cases, in all: without chance, and with the likelihoods as we believe them. */
export type SmallCases = { cases: number; bound: number; ours: number; list: number; worst: number };

/** The bound, ours and the scenario's own order, on the likelier and the rarer causes of every scenario. */
export function measureSmallCases(scenes: readonly Scene[], begins: readonly number[]): SmallCases {
  const total = { cases: 0, bound: 0, ours: 0, list: 0, worst: 1 };
  const known = new Set<string>();
  for (const scene of scenes) {
    if (known.has(scene.scenario)) continue;
    known.add(scene.scenario);
    for (const from of begins) {
      const model = smallCase(scene, from);
      if (model.causes.length < 4 || !model.checks.length) continue;
      const bound = boundOf(model, scene.stakes);
      const ours = costOf(model, scene.stakes);
      total.cases++;
      total.bound += bound;
      total.ours += ours;
      total.list += costOf(model, scene.stakes, inOrder);
      total.worst = Math.max(total.worst, ours / bound);
    }
  }
  return total;
}

/** Every check in the trade's order, a wait after anything put right, a part as soon as it is proven. */
const inOrder: Chooser = (_model, _belief, allowed, state) => {
  const cost = Number.NaN;
  const [cause = state.due[0]] = state.proven;
  if (cause !== undefined) return { stop: "part", cause, due: !state.proven.length, cost };
  if (state.fixed.length) return { wait: true, cost };
  const [next] = allowed;
  return next === undefined ? { stop: "professional", cost } : { next, cost };
};
