import { createMemory, holds } from "../../chart/index.ts";
import { guardOf } from "../../condition/index.ts";
import type { Flow } from "../../guide/index.ts";
import { coursesOf } from "./courses.ts";
import type { Report } from "./report.ts";
import { canHold, scopeOf } from "./scope.ts";

/** Scenarios that no course of the opening leads to, because none of their own or an earlier one takes them all. */
export function findUnrouted(flow: Flow, report: Report): void {
  const scenarios = Object.values(flow.scenarios).map(({ id, when }) => ({
    id,
    guard: guardOf(when, flow.conditions),
  }));
  const at = "2000-01-01T00:00:00Z";
  const reached = new Set<string | undefined>();
  for (const { answers } of coursesOf(flow.opening)) {
    const findings = Object.fromEntries(
      [...answers].map(([turn, answer]) => [`opening.${turn}`, { answer, at }]),
    );
    const memory = { ...createMemory(), findings };
    reached.add(scenarios.find(({ guard }) => holds(memory, guard, { type: "", at }))?.id);
  }
  for (const { id } of scenarios)
    if (!reached.has(id))
      report(
        "unreachable",
        `scenarios/${id}.yaml`,
        ["when"],
        `No answers of the opening lead to scenario "${id}": nothing fits its condition, or an earlier scenario takes it all.`,
        "key",
      );
}

/** Checks whose condition nothing in their scenario can bring about. */
export function findNeverAsked(flow: Flow, report: Report): void {
  for (const scenario of Object.values(flow.scenarios)) {
    const scope = scopeOf(flow, scenario);
    for (const [place, { check, when }] of scenario.checks.entries())
      if (when !== undefined && !canHold(when, flow, scope))
        report(
          "unreachable",
          `scenarios/${scenario.id}.yaml`,
          ["checks", place, "when"],
          `Nothing in scenario "${scenario.id}" can make this condition hold, so the check "${check}" is never asked here.`,
          "key",
        );
  }
}
