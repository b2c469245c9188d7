import { causesOf, chanceOf } from "../../compile/index.ts";
import type { Flow, Scenario } from "../../guide/index.ts";
import type { Report } from "./report.ts";
import { canHold, outcomesOf, type Scope, scopeOf } from "./scope.ts";
import { findingOf, waysToHold } from "./ways-to-hold.ts";

/**
 * Causes that are suspected although no check of any scenario that suspects them can prove them or put them right, and
 * no professional is the end of them anyway; and proofs that a scenario has and cannot come to.
 */
export function findUnproved(flow: Flow, report: Report): void {
  const suspected = new Set<string>();
  const settled = new Set<string>();
  for (const scenario of Object.values(flow.scenarios)) {
    const scope = scopeOf(flow, scenario);
    const file = `scenarios/${scenario.id}.yaml`;
    const suspects = causesOf(flow, scenario.id);
    for (const cause of suspects) {
      suspected.add(cause);
      if (canSettle(flow, scenario, scope, cause)) settled.add(cause);
    }
    for (const [place, cause] of scenario.proofs.entries()) {
      const { proof } = flow.causes[cause] ?? {};
      if (proof !== undefined && !suspects.includes(cause) && !canHold(proof, flow, scope))
        report({ code: "unprovable-cause", file, path: ["proofs", place], cause });
    }
  }
  const spot = { file: "causes.yaml", at: "key" } as const;
  for (const cause of suspected)
    if (!settled.has(cause) && flow.causes[cause]?.remedy !== "professional")
      report({ code: "unsettled-cause", ...spot, path: [cause], cause });
}

function canSettle(flow: Flow, scenario: Scenario, scope: Scope, cause: string): boolean {
  const { proof } = flow.causes[cause] ?? {};
  const proved = proof !== undefined && scenario.proofs.includes(cause) && canHold(proof, flow, scope);
  return proved || scope.remedied.has(cause) || scope.ended.has(cause);
}

/** Causes that no scenario suspects and no answer finds. */
export function findUnusedCauses(flow: Flow, report: Report): void {
  const used = new Set(
    Object.values(flow.scenarios).flatMap(({ id, proofs }) => [...causesOf(flow, id), ...proofs]),
  );
  for (const check of [flow.opening, ...Object.values(flow.checks)])
    for (const { finds, remedies } of outcomesOf(check))
      for (const one of [finds, remedies]) if (one) used.add(one);
  for (const cause of Object.keys(flow.causes))
    if (!used.has(cause)) report({ code: "unused-cause", file: "causes.yaml", path: [cause], at: "key" });
}

/**
 * Causes that end with a part although some way to prove them rests on no finding that speaks for the cause: one
 * that is likelier with it than with causes that the check does not name. What is sold as merely due is said so.
 */
export function findUndecided(flow: Flow, report: Report): void {
  for (const [id, { remedy, proof, claim }] of Object.entries(flow.causes)) {
    if (remedy !== "part" || claim === "due") continue;
    const spot = { file: "causes.yaml", at: "key" } as const;
    if (proof === undefined) report({ code: "part-without-proof", ...spot, path: [id] });
    else if (
      !waysToHold(proof, flow.conditions).every((way) =>
        way.some((one) => one.holds && speaksFor(flow, id, findingOf(one))),
      )
    )
      report({ code: "part-without-decisive-check", ...spot, path: [id, "proof"] });
  }
}

function speaksFor(flow: Flow, cause: string, finding: { turn: string; is: string[] } | null): boolean {
  const [id = "", turn = ""] = finding?.turn.split(".") ?? [];
  const check = flow.checks[id];
  if (!finding || !check) return false;
  const { likelihood } = flow.words;
  return finding.is.every((answer) => {
    const { answers, verdicts } = check.turns[turn] ?? {};
    if ({ ...answers, ...verdicts }[answer]?.finds === cause) return true;
    return Object.values(check.outcomes ?? {}).some(
      ({ from, sees = [], shows = [], says = {} }) =>
        from.includes(`${turn}.${answer}`) &&
        (sees.includes(cause) ||
          chanceOf(flow.machine, cause, shows) > chanceOf(flow.machine, "", shows) ||
          (likelihood[says[cause] ?? ""] ?? 0) > (likelihood[says.otherwise ?? ""] ?? 1)),
    );
  });
}
