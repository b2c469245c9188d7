import { all, any, type Guard, not } from "../condition/index.ts";
import {
  byPlugInstead,
  type Check,
  type Flow,
  type Preparation,
  type Prepared,
  preparations,
  type Scenario,
  statesIn,
  type TurnRule,
} from "../guide/index.ts";
import { hazardsOfTurn } from "./hazards.ts";
import { gatesOf, outcomesOf } from "./parts-of-check.ts";

/**
 * What a gate has had prepared is not to be forgotten. The data says what a gate or an answer `leaves`, what a turn
 * `needs`, which check `restores` it, and what `keeps` the tap closed (a cause or a scenario, for a leak). Here that
 * becomes guards of the chart.
 */

/** Causes that keep the water closed as long as they are found and not put right. */
export function keepersOf(flow: Flow): string[] {
  return Object.keys(flow.causes).filter((id) => flow.causes[id]?.keeps);
}

/** What a check can leave to be put back. */
function changedBy(flow: Flow, check: Check): Preparation[] {
  return oursIn([...gatesOf(check).map((gate) => flow.gates[gate]), ...outcomesOf(check)]);
}

/** What is changed by us in any of these. */
function oursIn(leaving: readonly ({ leaves?: Prepared | undefined } | undefined)[]): Preparation[] {
  const states = leaving.flatMap((one) => statesIn(one?.leaves));
  return [...new Set(states.flatMap(([one, state]) => (state === preparations[one].ours ? [one] : [])))];
}

/** A check that puts things back, and which of them its scenario can leave changed. */
type Restorer = { id: string; restores: Preparation[] };

/** Every check of a scenario asks for its restorers. */
const known = new WeakMap<Flow, WeakMap<Scenario, readonly Restorer[]>>();

/** The checks that put back what a scenario or the opening can leave changed, in the order in which they are asked. */
export function restorersOf(flow: Flow, scenario: Scenario): readonly Restorer[] {
  const cache = known.get(flow) ?? new WeakMap<Scenario, readonly Restorer[]>();
  known.set(flow, cache);
  const restorers = cache.get(scenario) ?? findRestorers(flow, scenario);
  cache.set(scenario, restorers);
  return restorers;
}

function findRestorers(flow: Flow, scenario: Scenario): Restorer[] {
  const changed = scenario.checks.flatMap(({ check }) => {
    const rule = flow.checks[check];
    return rule ? changedBy(flow, rule) : [];
  });
  changed.push(...oursIn(outcomesOf(flow.opening)));
  const all = Object.values(flow.checks).flatMap(({ id, restores = [] }) => {
    const own = restores.filter((one) => changed.includes(one));
    return own.length ? [{ id, restores: own }] : [];
  });
  // The tap before all else: its joints are looked at while they can be seen.
  return all.sort((a, b) => Number(b.restores.includes("water")) - Number(a.restores.includes("water")));
}

/**
 * What has to be put back before a check: what a turn of it needs so, unless a gate of it changes that, or an answer that
 * leads on within it.
 */
export function needsBack(flow: Flow, check: Check): Preparation[] {
  const within = outcomesOf(check).filter(({ to }) => to in check.turns);
  const changed = oursIn([...gatesOf(check).map((gate) => flow.gates[gate]), ...within]);
  const needs = Object.values(check.turns).flatMap((turn) => statesIn(needsOf(flow, check, turn)));
  const back = needs.flatMap(([one, state]) => (state === preparations[one].back ? [one] : []));
  return [...new Set(back)].filter((one) => !changed.includes(one));
}

/** The states that a turn needs: what it says itself, and what its hazards are safe in alone. */
export function needsOf(flow: Flow, check: Check, turn: TurnRule): Prepared {
  const hazards = hazardsOfTurn(flow, check, turn).map((hazard) => flow.hazards[hazard]?.needs);
  const needs: Prepared = Object.assign({}, turn.needs, ...hazards);
  return needs.plug === preparations.plug.back ? { ...byPlugInstead, ...needs } : needs;
}

/** A replayed log goes where it went: it may be older than the question. The turn that it meets says it instead. */
const led: Guard = { type: "led", params: {} };
const stands = (of: Preparation, ...is: string[]): Guard => ({ type: "prepared", params: { of, is } });

/** Something is changed by us and not put back; the tap only where no leak keeps it closed. */
function isOurs(flow: Flow, one: Preparation): Guard {
  const ours = stands(one, preparations[one].ours);
  return one === "water" ? all(ours, not({ type: "found", params: { causes: keepersOf(flow) } })) : ours;
}

/** Whether any of these is changed by us still, whatever keeps it so. */
export function anyOurs(some: readonly Preparation[]): Guard {
  return any(...some.map((one) => stands(one, preparations[one].ours)));
}

/** Some of these are changed by us, and are to be put back before what comes next. */
export function mustPutBack(flow: Flow, some: readonly Preparation[]): Guard {
  return all(not(led), any(...some.map((one) => isOurs(flow, one))));
}

/** The opposite, for what comes next. */
export function mayGoOn(flow: Flow, some: readonly Preparation[]): Guard {
  return any(led, ...(some.length ? [all(...some.map((one) => not(isOurs(flow, one))))] : [all()]));
}

/** A check that needs these put back can be come to: they are, or may be. */
export function canPutBack(flow: Flow, some: readonly Preparation[]): Guard {
  const stuck = some.map((one) => stands(one, preparations[one].left));
  const leaks = some.includes("water")
    ? [all(stands("water", preparations.water.ours), not(isOurs(flow, "water")))]
    : [];
  return any(led, not(any(...stuck, ...leaks)));
}
