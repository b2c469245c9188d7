import { all, type Guard, guardOf, not } from "../condition/index.ts";
import type { Flow } from "../guide/index.ts";
import { isWaitForIce } from "./wait-for-ice.ts";
import { needsWater, reopenerOf, waterCanCome } from "./water.ts";

/**
 * The guards by which a check may be entered: once where it does not repeat, and where its condition holds. A second
 * look at it, where it can have one, has the same condition. The chart and its adviser both take them from here.
 * @throws Error for a check that does not exist
 */
export function entryGuards(
  flow: Flow,
  scenario: string,
  place: number,
): { once: Guard; again: Guard | null } {
  const rule = flow.scenarios[scenario];
  const entry = rule?.checks[place];
  const check = flow.checks[entry?.check ?? ""];
  if (!rule || !entry || !check)
    throw new Error(`Scenario "${scenario}" names the check "${entry?.check}", which does not exist`);
  const open = needsWater(check) && reopenerOf(flow, rule) ? [waterCanCome(flow)] : [];
  const when = [...open, ...(entry.when ? [guardOf(entry.when, flow.conditions)] : [])];
  const params = { check: check.id };
  const undone = check.repeats ? [] : [not({ type: "done", params })];
  // Nobody passes a gate twice for the same look, and a wait is no look.
  const repeatable = !check.repeats && !check.gates?.length && !isWaitForIce(check) && !entry.first;
  return {
    once: all(...undone, ...when),
    again: repeatable ? all({ type: "may-look-again", params }, ...when) : null,
  };
}
