import { composeChart } from "../../compile/index.ts";
import type { Flow } from "../../guide/index.ts";
import { pickScenario } from "./pick-scenario.ts";
import { placePage } from "./place-page.ts";
import { writeScxml } from "./scxml.ts";
import { writeSvg } from "./svg.ts";

export { stateName } from "./scxml.ts";

/**
 * One scenario with the opening and the endings as a W3C SCXML document.
 * @throws Error for a scenario that the flow does not have
 */
export function drawScxml(flow: Flow, scenario: string): string {
  return writeScxml(pickScenario(flow, composeChart(flow), scenario), scenario);
}

/**
 * One scenario as an SVG drawing, the opening folded into one box.
 * @throws Error for a scenario that the flow does not have
 */
export function drawSvg(flow: Flow, scenario: string): string {
  const config = pickScenario(flow, composeChart(flow), scenario);
  return writeSvg(placePage(flow, config, scenario), config);
}
