import { type Adviser, createAdviser } from "../advice/index.ts";
import type { Flow } from "../guide/index.ts";
import { type Chart, createChart } from "./chart.ts";
import { composeChart } from "./compose.ts";

/**
 * The chart for a scenario: with the opening, the endings and this scenario in full, and every other scenario as one
 * closed state. For null, before a scenario is known, all are closed. Built when first asked for: a slow phone needs
 * a quarter of a second for all of them at once, and one session needs one.
 */
export type Charts = ((scenario: string | null) => Chart) & { adviser: Adviser };

/** Charts of a flow, each kept once it is built. */
export function createCharts(flow: Flow, adviser: Adviser = createAdviser(flow)): Charts {
  const known = new Map<string | null, Chart>();
  const chartOf = (scenario: string | null) => {
    const chart =
      known.get(scenario) ??
      createChart(flow, composeChart(flow, scenario === null ? [] : [scenario]), adviser);
    known.set(scenario, chart);
    return chart;
  };
  return Object.assign(chartOf, { adviser });
}
