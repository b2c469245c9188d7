import type { ChartConfig, StateConfig } from "../../chart/index.ts";
import type { Flow } from "../../guide/index.ts";

/**
 * The part of the composed chart that one scenario can meet: the opening, the scenario and the endings. The other
 * scenarios stand as bare states where the drawing ends.
 * @throws Error for a scenario that the flow does not have, naming those it has
 */
export function pickScenario(flow: Flow, config: ChartConfig, scenario: string): ChartConfig {
  if (!flow.scenarios[scenario])
    throw new Error(
      `There is no scenario "${scenario}". There are: ${Object.keys(flow.scenarios).join(", ")}`,
    );
  const states = Object.entries(config.states).map(([name, state]): [string, StateConfig] =>
    name in flow.scenarios && name !== scenario ? [name, { id: state.id }] : [name, state],
  );
  return { ...config, states: Object.fromEntries(states) };
}
