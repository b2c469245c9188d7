import type { Condition } from "../../condition/index.ts";
import type { Flow, Opening, Outcome, Scenario, TurnRule } from "../../guide/index.ts";
import { findingOf, type Literal, waysToHold } from "./ways-to-hold.ts";

/** What can happen within one scenario, whatever the order of its checks. */
export type Scope = {
  checks: Set<string>;
  found: Set<string>;
  remedied: Set<string>;
  /** Causes that an answer ends the session with. */
  ended: Set<string>;
};

/** Gathers what the checks of a scenario and the opening can find, put right and end with. */
export function scopeOf(flow: Flow, scenario: Scenario): Scope {
  const scope: Scope = {
    checks: new Set(["opening"]),
    found: new Set(),
    remedied: new Set(),
    ended: new Set(),
  };
  for (const { check } of scenario.checks) scope.checks.add(check);
  for (const id of scope.checks)
    for (const outcome of outcomesOf(id === "opening" ? flow.opening : flow.checks[id])) {
      if (outcome.finds) (outcome.to === "professional" ? scope.ended : scope.found).add(outcome.finds);
      if (outcome.remedies) scope.remedied.add(outcome.remedies);
    }
  return scope;
}

/** Every outcome of every answer of a check. */
export function outcomesOf(check: Opening | undefined): Outcome[] {
  return Object.values(check?.turns ?? {}).flatMap((turn) =>
    outcomesOfTurn(turn).map(([, outcome]) => outcome),
  );
}

/** Every way out of a turn: its answers, its verdicts, the standing answers that it leaves open, and a wait's end. */
export function outcomesOfTurn(turn: TurnRule): [answer: string, outcome: Outcome][] {
  const standing = (["not-sure", "cannot"] as const).flatMap((answer): [string, Outcome][] => {
    const outcome = turn[answer] ?? { to: "done" };
    return outcome && !(turn.kind === "wait" && answer === "not-sure") ? [[answer, outcome]] : [];
  });
  const over: [string, Outcome][] = turn.then ? [["over", { to: turn.then }]] : [];
  return [...Object.entries({ ...turn.answers, ...turn.verdicts }), ...standing, ...over];
}

/** True where some course of this scenario can make the condition hold. */
export function canHold(condition: Condition, flow: Flow, scope: Scope): boolean {
  return waysToHold(condition, flow.conditions).some((way) => isPossible(way, scope));
}

function isPossible(way: Literal[], scope: Scope): boolean {
  const open = new Map<string, string[]>();
  for (const literal of way.filter(({ holds }) => holds)) {
    const finding = findingOf(literal);
    if (finding) {
      if (!scope.checks.has(finding.turn.split(".")[0] ?? "")) return false;
      const before = open.get(finding.turn) ?? finding.is;
      open.set(
        finding.turn,
        before.filter((answer) => finding.is.includes(answer)),
      );
    } else if (!isWithin(literal, scope)) return false;
  }
  for (const literal of way.filter(({ holds }) => !holds)) {
    const finding = findingOf(literal);
    const before = finding && open.get(finding.turn);
    if (before)
      open.set(
        finding.turn,
        before.filter((answer) => !finding.is.includes(answer)),
      );
  }
  return [...open.values()].every((answers) => answers.length > 0);
}

function isWithin({ of: { type, params } }: Literal, scope: Scope): boolean {
  switch (type) {
    case "done":
      return scope.checks.has(params.check);
    case "found":
      return params.causes.some((cause) => scope.found.has(cause) || scope.ended.has(cause));
    case "remedied":
      return params.causes.some((cause) => scope.remedied.has(cause));
    default:
      return scope.remedied.size > 0;
  }
}
