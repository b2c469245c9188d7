import { type Belief, createBelief, failedFix, type Model, updateBelief } from "../../diagnosis/index.ts";
import type { Flow, Outcome } from "../flow.ts";
import type { ChartContext } from "../memory.ts";
import { isWaitForIce } from "./model-of.ts";

/** What a session's memory means to the diagnosis: the belief, and the causes put right since the last wait. */
export type Learnt = { belief: Belief; fixed: string[] };

/**
 * Reads the memory of a chart. Of several findings of a check that stand in outcomes the latest counts, so that a
 * second look replaces the first; findings that stand in none say nothing.
 */
export function learntFrom(flow: Flow, model: Model, memory: ChartContext, success: number): Learnt {
  const shown: { check: string; outcome: string; at: number }[] = [];
  for (const { id } of model.checks) {
    let latest: { check: string; outcome: string; at: number } | null = null;
    for (const [outcome, { from }] of Object.entries(flow.checks[id]?.outcomes ?? {}))
      for (const place of from) {
        const [turn = "", answer] = place.split(".");
        const finding = memory.findings[`${id}.${turn}`];
        if (!finding || finding.answer !== answer) continue;
        const at = Date.parse(finding.at);
        // At the same moment the one further on in its file counts less: outcomes name the deepest turns first.
        if (!latest || at > latest.at) latest = { check: id, outcome, at };
      }
    if (latest) shown.push(latest);
  }
  let belief = shown
    .sort((a, b) => a.at - b.at)
    .reduce((now, { check, outcome }) => updateBelief(model, now, check, outcome), createBelief());
  const { repairs, waitedInVain } = timesIn(flow, memory);
  const fixed: string[] = [];
  for (const [cause, at] of repairs) {
    if (memory.causes[cause] !== "fixed" || !model.causeAt.has(cause)) continue;
    if (at > waitedInVain) fixed.push(cause);
    else belief = failedFix(belief, cause, success);
  }
  return { belief, fixed };
}

/** When each cause was last put right, and when the last wait ended without what was waited for. */
function timesIn(
  flow: Flow,
  { findings }: ChartContext,
): { repairs: Map<string, number>; waitedInVain: number } {
  const repairs = new Map<string, number>();
  let waitedInVain = Number.NEGATIVE_INFINITY;
  for (const [place, { answer, at }] of Object.entries(findings)) {
    const [check = "", turn = ""] = place.split(".");
    const rule = flow.checks[check];
    const turns = rule?.turns ?? {};
    const results: Record<string, Outcome> = { ...turns[turn]?.answers, ...turns[turn]?.verdicts };
    const when = Date.parse(at);
    const remedied = results[answer]?.remedies;
    if (remedied) repairs.set(remedied, Math.max(repairs.get(remedied) ?? when, when));
    const afterWait = isWaitForIce(rule) && Object.values(turns).some(({ then }) => then === turn);
    if (afterWait && results[answer]?.to === "done") waitedInVain = Math.max(waitedInVain, when);
  }
  return { repairs, waitedInVain };
}
