import { causesOf, chanceOf } from "../../compile/index.ts";
import type { Condition } from "../../condition/index.ts";
import type { Check, Flow, Scenario } from "../../guide/index.ts";
import type { Report } from "./report.ts";
import { outcomesOf } from "./scope.ts";
import { findingOf, waysToHold } from "./ways-to-hold.ts";

/** Checks that cost a person time for nothing: no cause of the scenario and no condition rests on them. */
export function findUnneeded(flow: Flow, report: Report): void {
  const asked = new Set<string>();
  for (const scenario of Object.values(flow.scenarios)) {
    const leaned = leanedOn(flow, scenario);
    for (const [place, { check }] of scenario.checks.entries()) {
      asked.add(check);
      const rule = flow.checks[check];
      if (!rule || leaned.has(check) || isTelling(flow, rule, scenario)) continue;
      const file = `scenarios/${scenario.id}.yaml`;
      report({ code: "unneeded-check", file, path: ["checks", place], check });
    }
  }
  for (const [id, { restores, confirms }] of Object.entries(flow.checks))
    if (!asked.has(id) && !restores && !confirms)
      report({ code: "unused-check", file: `checks/${id}.yaml`, path: ["id"] });
}

/** True where the check says anything of a cause of the scenario, finds one, puts one right, or can end the session. */
function isTelling(flow: Flow, check: Check, scenario: Scenario): boolean {
  const suspects = new Set([...causesOf(flow, scenario.id), ...scenario.proofs]);
  const speaks = Object.values(check.outcomes ?? {}).some(
    ({ sees = [], shows = [], says = {} }) =>
      sees.some((cause) => suspects.has(cause)) ||
      [...suspects].some(
        (cause) => chanceOf(flow.machine, cause, shows) !== chanceOf(flow.machine, "", shows),
      ) ||
      Object.entries(says).some(([cause, word]) => suspects.has(cause) && word !== says.otherwise),
  );
  return (
    speaks ||
    outcomesOf(check).some(
      ({ finds, remedies, to }) =>
        suspects.has(finds ?? "") ||
        suspects.has(remedies ?? "") ||
        (to !== "done" && !check.turns[to] && to !== ""),
    )
  );
}

/** The checks that a scenario's proofs, and the conditions of its other checks, rest on. */
function leanedOn(flow: Flow, scenario: Scenario): Set<string> {
  const proofs = scenario.proofs.map((cause) => ({ of: flow.causes[cause]?.proof, own: "" }));
  const whens = scenario.checks.map(({ check, when }) => ({ of: when, own: check }));
  return new Set(
    [...proofs, ...whens].flatMap(({ of, own }) => checksIn(of, flow).filter((check) => check !== own)),
  );
}

function checksIn(condition: Condition | undefined, flow: Flow): string[] {
  if (condition === undefined) return [];
  return waysToHold(condition, flow.conditions)
    .flat()
    .flatMap((literal) =>
      literal.of.type === "done"
        ? [literal.of.params.check]
        : (findingOf(literal)?.turn.split(".").slice(0, 1) ?? []),
    );
}
