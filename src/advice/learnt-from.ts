import type { ChartContext } from "../chart/index.ts";
import { type Belief, createBelief, failedFix, type Model, updateBelief } from "../diagnosis/index.ts";
import type { Diagnosis } from "./subject.ts";

/** What a session's memory means to the diagnosis: the belief, and the causes put right since the last wait. */
export type Learnt = { belief: Belief; fixed: string[] };

/**
 * What each check has shown, in the order in which they were last answered. Of several findings of a check that stand in
 * outcomes the latest counts, so that a second look replaces the first; findings that stand in none say nothing.
 */
export function shownIn(
  findings: Diagnosis["findings"],
  memory: Pick<ChartContext, "findings">,
): { check: string; outcome: string }[] {
  const shown: { check: string; outcome: string; at: number }[] = [];
  for (const [check, outcomes] of Object.entries(findings)) {
    let latest: { check: string; outcome: string; at: number } | null = null;
    for (const [outcome, from] of Object.entries(outcomes))
      for (const place of from) {
        const [turn = "", answer] = place.split(".");
        const finding = memory.findings[`${check}.${turn}`];
        if (!finding || finding.answer !== answer) continue;
        const at = Date.parse(finding.at);
        // At the same moment the one further on in its file counts less: outcomes name the deepest turns first.
        if (!latest || at > latest.at) latest = { check, outcome, at };
      }
    if (latest) shown.push(latest);
  }
  return shown.sort((a, b) => a.at - b.at);
}

/** Reads the memory of a chart. */
export function learntFrom(
  { findings, stakes, cures }: Pick<Diagnosis, "findings" | "stakes" | "cures">,
  model: Model,
  memory: ChartContext,
): Learnt {
  let belief = shownIn(findings, memory).reduce(
    (now, { check, outcome }) => updateBelief(model, now, check, outcome),
    createBelief(),
  );
  const isKnown = (cause: string) => model.causeAt.has(cause);
  const withCured = (causes: readonly string[]) =>
    causes.flatMap((cause) => [cause, ...(cures[cause] ?? [])]);
  for (const cause of withCured(memory.inVain).filter(isKnown))
    belief = failedFix(belief, cause, stakes.success);
  for (const cause of curedBy(model, memory.fitted)) belief = failedFix(belief, cause, stakes.success);
  return { belief, fixed: [...new Set(withCured(memory.untried))].filter(isKnown) };
}

/** All that the parts for these causes would have put right; a part may be proved by what is no cause of a complaint. */
function curedBy({ causes }: Model, fitted: readonly string[]): string[] {
  const parts = causes.flatMap(({ id, part }) => (part !== undefined && fitted.includes(id) ? part : []));
  return causes.flatMap(({ id, part }) => (part !== undefined && parts.includes(part) ? id : []));
}
