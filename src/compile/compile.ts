import type { Advisers } from "../advice/index.ts";
import type { Flow, Region, Scenario } from "../guide/index.ts";
import { addScenario, createGuide, type Guide, type ScenarioData, type StartData } from "../session/index.ts";
import { checksIn, composeOpening, composeScenario } from "./compose.ts";
import { diagnosisOf } from "./diagnosis-of.ts";
import { openingWays, scenariosAhead } from "./openings.ts";
import { scenarioSlice, startSlice } from "./slice-of.ts";

/** A flow as sessions run on it: what they start with, and each scenario. */
export type Compiled = { start: StartData; scenarios: ScenarioData[] };

/**
 * Compiles a flow that has passed the verifier: all that can be worked out before anybody has answered. Plain data.
 * @throws Error for a name that does not exist
 */
export function compileFlow(flow: Flow): Compiled {
  const chart = composeOpening(flow);
  const ways = openingWays(chart);
  const scenarios = Object.keys(flow.scenarios);
  const compileScenario = (scenario: Scenario): ScenarioData => ({
    id: scenario.id,
    flow: scenarioSlice(flow, scenario.id, checksIn(flow, scenario)),
    chart: composeScenario(flow, scenario),
    diagnosis: diagnosisOf(flow, scenario.id, ways),
  });
  return {
    start: { flow: startSlice(flow), chart, scenarios, ahead: scenariosAhead(ways, scenarios) },
    scenarios: Object.values(flow.scenarios).map(compileScenario),
  };
}

/** The guide with every scenario loaded, for whoever has flows/ at hand. */
export function compileGuide(flow: Flow, advisers?: Advisers): Guide {
  return guideOf(compileFlow(flow), advisers);
}

/** A compiled flow for readers who live elsewhere; all else of it is shared. */
export function inRegion<Flows extends Compiled>(compiled: Flows, region: Region): Flows {
  const { start } = compiled;
  return { ...compiled, start: { ...start, flow: { ...start.flow, region } } };
}

/** The guide with every scenario of a compiled flow loaded. */
export function guideOf({ start, scenarios }: Compiled, advisers?: Advisers): Guide {
  const guide = createGuide(start, advisers);
  for (const scenario of scenarios) addScenario(guide, scenario);
  return guide;
}
