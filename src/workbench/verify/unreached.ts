import { createMemory, holds } from "../../chart/index.ts";
import { guardOf } from "../../condition/index.ts";
import type { Flow } from "../../guide/index.ts";
import { pathsThrough } from "./paths-through.ts";
import type { Report } from "./report.ts";
import { canHold, scopeOf } from "./scope.ts";

/** Scenarios that no path through the opening leads to, because none of their own or an earlier one takes them all. */
export function findUnrouted(flow: Flow, report: Report): void {
  const scenarios = Object.values(flow.scenarios).map(({ id, when }) => ({
    id,
    guard: guardOf(when, flow.conditions),
  }));
  const at = "2000-01-01T00:00:00Z";
  const reached = new Set<string | undefined>();
  for (const { answers } of pathsThrough(flow.opening)) {
    const findings = Object.fromEntries(
      [...answers].map(([turn, answer]) => [`opening.${turn}`, { answer, at }]),
    );
    const memory = { ...createMemory(), findings };
    reached.add(scenarios.find(({ guard }) => holds(memory, guard, { type: "", at }))?.id);
  }
  for (const { id } of scenarios)
    if (!reached.has(id))
      report({ code: "unreachable/scenario", file: `scenarios/${id}.yaml`, path: ["when"], at: "key" });
}

/** Checks whose condition nothing in their scenario can bring about. */
export function findNeverAsked(flow: Flow, report: Report): void {
  for (const scenario of Object.values(flow.scenarios)) {
    const scope = scopeOf(flow, scenario);
    for (const [place, { check, when }] of scenario.checks.entries())
      if (when !== undefined && !canHold(when, flow, scope))
        report({
          code: "unreachable/check",
          file: `scenarios/${scenario.id}.yaml`,
          path: ["checks", place, "when"],
          at: "key",
          check,
        });
  }
}
