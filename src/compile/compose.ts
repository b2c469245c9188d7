import type { ChartConfig, StateConfig, Transition } from "../chart/index.ts";
import { reopenerOf } from "../chart/index.ts";
import { guardOf } from "../condition/index.ts";
import type { Flow, Scenario } from "../guide/index.ts";
import { dangersOf } from "../guide/index.ts";
import { composeCheck } from "./compose-check.ts";
import { composeChoice } from "./compose-choice.ts";
import { composeEndings } from "./compose-endings.ts";

/**
 * Composes the whole flow into one chart: opening, scenarios, endings. Pure data.
 * @param open the scenarios to compose in full; any other stands in the chart as one closed state
 */
export function composeChart(flow: Flow, open: string[] = Object.keys(flow.scenarios)): ChartConfig {
  const states: Record<string, StateConfig> = { opening: composeCheck(flow, flow.opening, null) };
  states.routing = { id: "routing", always: routes(flow) };
  for (const [id, scenario] of Object.entries(flow.scenarios))
    states[id] = open.includes(id) ? composeScenario(flow, scenario) : { id };
  // Whoever asks for a person at the card of a part takes the proved cause along.
  const help = (proved: boolean) => ({
    target: "#professional",
    actions: [{ type: "remember", params: { ...(proved ? {} : { cause: null }), who: "shop" } }],
  });
  const thanks = { target: "#fixed", actions: [{ type: "remember", params: { creditsLastFix: true } }] };
  // 'Not sure' stops too: a danger that was reported under another flow may have no name in this one.
  const dangers = Object.fromEntries(
    [...dangersOf(flow), "not-sure"].map((danger) => [
      `danger-reported.${danger}`,
      { target: "#stopped", actions: [{ type: "remember", params: { danger, cause: null } }] },
    ]),
  );
  Object.assign(states, composeEndings());
  // The stop ending takes no further event: nothing leads on from a danger but a new start.
  for (const [name, state] of Object.entries(states)) {
    if (name === "routing" || name === "stopped") continue;
    state.on = { ...state.on, ...dangers };
    if (name !== "professional" && name !== "fixed") state.on["help-asked"] = help(name === "part");
    if (name !== "opening" && name !== "fixed") state.on["ice-returned"] = thanks;
  }
  return { id: "fridgeside", initial: "opening", states };
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

function composeScenario(flow: Flow, scenario: Scenario): StateConfig {
  const choosing = `${scenario.id}/choosing`;
  const states: Record<string, StateConfig> = {
    choosing: {
      id: choosing,
      always: composeChoice(flow, scenario),
    },
  };
  for (const id of new Set(scenario.checks.map((entry) => entry.check))) {
    const check = flow.checks[id];
    if (!check) throw new Error(`Scenario "${scenario.id}" names the check "${id}", which does not exist`);
    states[id] = composeCheck(flow, check, scenario.id);
  }
  const reopener = reopenerOf(flow, scenario);
  if (reopener) states[reopener.id] = composeCheck(flow, reopener, scenario.id);
  return { id: scenario.id, initial: "choosing", states };
}
