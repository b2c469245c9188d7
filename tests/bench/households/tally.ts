import { canAnswer, type Home } from "./home.ts";
import type { Visit } from "./visit.ts";

/** What one visit came to, in the terms that are compared. */
export type Score = {
  minutes: number;
  checks: number;
  hours: number;
  gates: number;
  right: boolean;
  wrongPart: boolean;
  needlessCall: boolean;
  due: boolean;
  cost: number;
};

/**
 * Scores a finished visit. Right: the ice is back; or the part bought last puts right something that is wrong; or
 * a professional comes to a home where somebody has to come: for the cause, to fit the part, or because the people
 * there cannot do what would put it right.
 */
export function scoreOf(visit: Visit): Score {
  const { home, present, ending, bought, minutes, checks, hours, gates } = visit;
  const { stakes } = home.scene;
  const { causes, parts } = home.scene.flow;
  if (!ending) throw new Error("The visit has not ended");
  const rules = present.flatMap((fault) => causes[fault] ?? []);
  const needs =
    rules.some(({ remedy }) => remedy === "professional") ||
    present.some((fault) => isOutOfReach(home, fault));
  const fits = rules.some(({ part }) => parts[part ?? ""]?.fitting === "professional");
  const last = bought.at(-1);
  const calls = ending.how === "professional" || (ending.how === "part" && !last?.right);
  const needlessCall = calls && !needs && !fits;
  const wrong = bought.filter((one) => !one.right && !one.due).length;
  const unneeded = bought.filter((one) => !one.right).length;
  const right =
    ending.how === "fixed" ? !present.length : ending.how === "part" ? last?.right === true : !needlessCall;
  const cost =
    minutes * stakes.minute +
    hours * stakes.hour +
    unneeded * stakes.wrongPart +
    (needlessCall ? stakes.callOut : calls && !needs ? stakes.secondVisit : 0);
  return {
    ...{ minutes, checks, hours, gates, right, cost },
    wrongPart: wrong > 0,
    needlessCall: ending.how === "professional" && needlessCall,
    due: bought.some((one) => one.due && !one.right),
  };
}

/** True where the people of this home cannot do what would put the fault right, or prove the part that would. */
function isOutOfReach(home: Home, fault: string): boolean {
  const { model } = home.scene;
  const place = model.causeAt.get(fault);
  const canDo = (check: number) => canAnswer(home, model.checks[check]?.id ?? "");
  const repairs = model.checks.flatMap((check, at) =>
    check.repairs.some(({ cause }) => cause === place) ? [at] : [],
  );
  const proofs = model.causes[place ?? -1]?.proofs ?? [];
  if (proofs.length) return proofs.every((steps) => steps.some(({ check }) => !canDo(check)));
  return repairs.length > 0 && !repairs.some(canDo);
}

/** Means over many visits; `late` is what nine in ten stay below. */
export type Summary = {
  homes: number;
  minutes: number;
  lateMinutes: number;
  checks: number;
  lateChecks: number;
  hours: number;
  gates: number;
  right: number;
  wrongPart: number;
  needlessCall: number;
  due: number;
  cost: number;
};

export function summarise(scores: readonly Score[]): Summary {
  const mean = (of: (score: Score) => number) =>
    scores.reduce((sum, score) => sum + of(score), 0) / scores.length;
  const late = (of: (score: Score) => number) =>
    scores.map(of).sort((a, b) => a - b)[Math.ceil(scores.length * 0.9) - 1] ?? 0;
  return {
    homes: scores.length,
    minutes: mean(({ minutes }) => minutes),
    lateMinutes: late(({ minutes }) => minutes),
    checks: mean(({ checks }) => checks),
    lateChecks: late(({ checks }) => checks),
    hours: mean(({ hours }) => hours),
    gates: mean(({ gates }) => gates),
    right: mean(({ right }) => Number(right)),
    wrongPart: mean(({ wrongPart }) => Number(wrongPart)),
    needlessCall: mean(({ needlessCall }) => Number(needlessCall)),
    due: mean(({ due }) => Number(due)),
    cost: mean(({ cost }) => cost),
  };
}
