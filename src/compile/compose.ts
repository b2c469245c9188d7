import type { ChartConfig, Note, StateConfig, Transition } from "../chart/index.ts";
import { guardOf } from "../condition/index.ts";
import { type Check, dangersOf, type Flow, type Scenario } from "../guide/index.ts";
import { composeCheck } from "./compose-check.ts";
import { composeChoice } from "./compose-choice.ts";
import { composeEndings, composeLater } from "./compose-endings.ts";
import { confirmerOf, type FixedWays, straightToFixed, waysToFixed, withoutDoubt } from "./fixed.ts";
import { restorersOf } from "./preparations.ts";
import { isWaitForIce, waitOf } from "./wait-for-ice.ts";

/** The whole flow in one chart, to be verified and drawn as one: the opening, every scenario, the endings. */
export function composeChart(flow: Flow): ChartConfig {
  const { states, ...opening } = composeOpening(flow);
  const scenarios = Object.values(flow.scenarios);
  const composed = scenarios.map((scenario) => composeScenario(flow, scenario).states);
  const all: Record<string, StateConfig> = Object.assign({}, states, ...composed);
  return { ...opening, states: { ...all, ...waysBack(flow, all, scenarios) } };
}

/** The opening and the endings. It ends, too, in the state of the scenario that it has led to. Pure data. */
export function composeOpening(flow: Flow): ChartConfig {
  const opening = withReports(flow, { ...composeCheck(flow, flow.opening, null), ...composeEndings() });
  const routing: StateConfig = { id: "routing", always: routes(flow) };
  const stubs = Object.keys(flow.scenarios).map((id) => [id, { id }] as const);
  const { opening: first, ...endings } = opening;
  return {
    id: "fridgeside",
    initial: "opening",
    states: { opening: first as StateConfig, routing, ...Object.fromEntries(stubs), ...endings },
  };
}

/** One scenario and the endings. Its state has the choice of the first check as its first. Pure data. */
export function composeScenario(flow: Flow, scenario: Scenario): ChartConfig {
  const choosing: StateConfig = { id: `${scenario.id}/choosing`, always: composeChoice(flow, scenario) };
  const fixedAt = waysToFixed(flow, scenario);
  const checks = checksIn(flow, scenario).map((check) => composeCheck(flow, check, scenario.id, fixedAt));
  const wait = waitOf(flow, scenario);
  const later = wait && composeLater(scenario.id, wait.minutes, noteInVain(flow));
  const whole = {
    id: scenario.id,
    initial: "choosing",
    states: Object.assign({ choosing }, ...checks, later ? { later } : {}),
  };
  const { fixed, part, ...endings } = composeEndings();
  return {
    id: "fridgeside",
    initial: scenario.id,
    states: withReports(
      flow,
      { [scenario.id]: whole, ...waysBack(flow, { fixed, part }, [scenario]), ...endings },
      fixedAt,
    ),
  };
}

/** Who finds that it was not over goes on in the same scenario: what was put right, or the part, did not do it. */
function waysBack(
  flow: Flow,
  { fixed, part }: Record<string, StateConfig | undefined>,
  scenarios: Scenario[],
): Record<"fixed" | "part", StateConfig> {
  const back = (state: StateConfig, note: Note): StateConfig => {
    const ways = scenarios.map(
      ({ id, when }): Transition => ({
        target: `#${id}/choosing`,
        guard: guardOf(when, flow.conditions),
        actions: [{ type: "remember", params: note }],
      }),
    );
    return { ...state, on: { ...state.on, "trouble-returned": ways } };
  };
  const inVain = noteInVain(flow);
  const card = back(part?.states?.card as StateConfig, { ...inVain, fitted: true });
  return {
    fixed: back(fixed as StateConfig, inVain),
    part: { ...(part as StateConfig), states: { ...part?.states, card } },
  };
}

/** What was waited for stayed away after all; what was said of it before no longer holds. */
function noteInVain({ checks }: Flow): Note {
  const waits = Object.values(checks).filter((check) => check.repeats || isWaitForIce(check));
  return { inVain: true, cause: null, returns: true, forgets: waits.map(({ id }) => id) };
}

/** Every check that a scenario can ask, those that the chart asks by itself included. */
export function checksIn(flow: Flow, scenario: Scenario): Check[] {
  const restorers = restorersOf(flow, scenario).map(({ id }) => id);
  const confirmer = confirmerOf(flow, scenario);
  const own = [...restorers, ...(confirmer ? [confirmer.id] : [])];
  const ids = new Set([...scenario.checks.map(({ check }) => check), ...own]);
  return [...ids].map((id) => {
    const check = flow.checks[id];
    if (!check) throw new Error(`Scenario "${scenario.id}" names the check "${id}", which does not exist`);
    return check;
  });
}

/** What can be reported at any time. The stop ending takes no further event: nothing leads on from a danger but a new start. */
function withReports(
  flow: Flow,
  states: Record<string, StateConfig>,
  fixedAt: FixedWays = straightToFixed,
): Record<string, StateConfig> {
  // Whoever asks for a person at the card of a part takes the proved cause along.
  const help = (proved: boolean): Transition => ({
    target: "#professional",
    actions: [
      { type: "remember", params: { ...(proved ? {} : { cause: null }), who: "shop", calls: "somebody" } },
    ],
  });
  const thanks = { target: "#fixed", actions: [{ type: "remember", params: { creditsLastFix: true } }] };
  // 'Not sure' stops too: a danger that was reported under another flow may have no name in this one.
  const dangers = Object.fromEntries(
    [...dangersOf(flow), "not-sure"].map((danger) => [
      `danger-reported.${danger}`,
      { target: "#stopped", actions: [{ type: "remember", params: { danger, cause: null } }] },
    ]),
  );
  for (const [name, state] of Object.entries(states)) {
    if (name === "stopped") continue;
    state.on = { ...state.on, ...dangers };
    if (name !== "professional") state.on["help-asked"] = help(name === "part");
    if (name === "opening" || name === "fixed") continue;
    // From an ending nothing leads back into the search, not even to confirm that all is well.
    const isEnding = name === "part" || name === "professional";
    state.on["ice-returned"] = isEnding ? withoutDoubt(flow, thanks) : fixedAt(thanks);
  }
  return states;
}

function routes(flow: Flow): Transition[] {
  const known = Object.values(flow.scenarios).map((scenario) => ({
    target: `#${scenario.id}`,
    guard: guardOf(scenario.when, flow.conditions),
  }));
  return [
    ...known,
    { target: "#professional", actions: [{ type: "remember", params: { cause: null, who: "shop" } }] },
  ];
}
