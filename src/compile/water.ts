import type { Note, Water } from "../chart/index.ts";
import { all, any, type Guard, not } from "../condition/index.ts";
import type { Check, Flow, Leaves, Scenario } from "../guide/index.ts";

/**
 * A tap that a gate has had closed is not to be forgotten. The data says what closes it (`leaves` of a gate or an
 * answer), what opens it, what needs it open (`needs` of a turn) and what keeps it closed (`keeps` of a cause or a
 * scenario, for a leak). Here that becomes guards of the chart.
 */

const states: Record<Leaves["water"], Water> = {
  closed: "closed-by-us",
  "left-closed": "left-closed",
  open: "open",
};

/** What a transition notes of the water; nothing where it leaves it as it is. */
export function waterNote(leaves: Leaves | undefined): Pick<Note, "water"> {
  return leaves ? { water: states[leaves.water] } : {};
}

/** Causes that keep the water closed as long as they are found and not put right. */
export function keepersOf(flow: Flow): string[] {
  return Object.keys(flow.causes).filter((id) => flow.causes[id]?.keeps);
}

/** The check that opens the tap again, in a scenario where something closes it; else null. */
export function reopenerOf(flow: Flow, scenario: Scenario): Check | null {
  const closes = scenario.checks.some(({ check }) =>
    flow.checks[check]?.gates?.some((gate) => flow.gates[gate]?.leaves?.water === "closed"),
  );
  return (closes && Object.values(flow.checks).find(({ restores }) => restores === "water")) || null;
}

/** True for a check that is to find the water open. One behind a gate that closes it opens it in a turn of its own. */
export function needsWater({ gates, turns }: Check): boolean {
  return !gates?.length && Object.values(turns).some(({ needs }) => needs);
}

const water = (...is: Water[]): Guard => ({ type: "water", params: { is } });
/** A replayed log goes where it went: it may be older than the question. The turn that it meets says it instead. */
const led: Guard = { type: "led", params: {} };
const leaks = (flow: Flow): Guard => ({ type: "found", params: { causes: keepersOf(flow) } });

export const closedByUs: Guard = water("closed-by-us");

/** The tap is closed by us, and is to be opened before what comes next. */
export function mustReopen(flow: Flow): Guard {
  return all(closedByUs, not(led), not(leaks(flow)));
}

/** The opposite, for what comes next. */
export const mayGoOn = (flow: Flow): Guard => any(not(closedByUs), led, leaks(flow));

/** A check that needs water can be come to: the tap is open, or may be opened. */
export function waterCanCome(flow: Flow): Guard {
  return any(water("as-found", "open"), led, all(closedByUs, not(leaks(flow))));
}
