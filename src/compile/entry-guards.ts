import { all, any, type Guard, guardOf, not } from "../condition/index.ts";
import type { Flow } from "../guide/index.ts";
import { gatesOf, partsOfCheck } from "./parts-of-check.ts";
import { canPutBack, needsBack, restorersOf } from "./preparations.ts";
import { isWaitForIce } from "./wait-for-ice.ts";

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
  const restored = restorersOf(flow, rule).flatMap(({ restores }) => restores);
  const back = needsBack(flow, check).filter((one) => restored.includes(one));
  const gates = check.gates ?? [];
  const when = [
    ...(back.length ? [canPutBack(flow, back)] : []),
    // One 'I can't confirm all of this' is enough; only a log from before that was so goes on.
    ...(gates.length ? [any({ type: "led", params: {} }, not({ type: "refused", params: { gates } }))] : []),
    ...(entry.when ? [guardOf(entry.when, flow.conditions)] : []),
  ];
  const params = { check: check.id };
  // A gate that was shown on the way into the check is not shown for it again.
  const passed = gatesOf(check).map(
    (gate): Guard => ({
      type: "answered",
      params: { turn: `${check.id}.gate-${gate}`, is: ["ready", "cannot"] },
    }),
  );
  const undone = check.repeats ? [] : [not({ type: "done", params })];
  // Nobody passes a gate twice for the same look, and a wait is no look.
  const [start] = partsOfCheck(check);
  const repeatable = !check.repeats && !start?.gates.length && !isWaitForIce(check);
  return {
    once: all(...undone, ...when),
    again: repeatable ? all({ type: "may-look-again", params }, ...passed.map(not), ...when) : null,
  };
}
