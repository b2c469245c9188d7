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
  const pointed = ({ on, states, ...state }: StateConfig): StateConfig => ({
    ...state,
    ...(on && { on: eachOf(on, (ways) => [ways].flat().map(outside)) }),
    ...(states && { states: eachOf(states, pointed) }),
  });
  const states = eachOf(config.states, (state, name) => (isOther(name) ? { id: state.id } : pointed(state)));
  return { ...config, states };
}

const eachOf = <From, To>(
  all: Record<string, From>,
  to: (one: From, name: string) => To,
): Record<string, To> => Object.fromEntries(Object.entries(all).map(([name, one]) => [name, to(one, name)]));
