import type { ChartConfig, StateConfig, Transition } from "../../chart/index.ts";
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
  const isOther = (name: string) => name in flow.scenarios && name !== scenario;
  // An ending leads back into each scenario; of another one only the bare state stands here.
  const outside = (way: Transition): Transition => {
    const [name = "", inner] = way.target.replace(/^#/, "").split("/");
    return inner && isOther(name) ? { ...way, target: `#${name}` } : way;
  };
  const states = Object.entries(config.states).map(([name, state]): [string, StateConfig] => {
    if (isOther(name)) return [name, { id: state.id }];
    const ways = Object.entries(state.on ?? {}).map(([event, all]) => [event, [all].flat().map(outside)]);
    return [name, state.on ? { ...state, on: Object.fromEntries(ways) } : state];
  });
  return { ...config, states: Object.fromEntries(states) };
}
