import { type Advisers, createAdviser, type Diagnosis } from "../advice/index.ts";
import type { ChartConfig, FlowSlice } from "../chart/index.ts";
import { type Chart, createChart } from "./chart.ts";

/** What every session starts with, as the build has compiled it: plain data. */
export type StartData = {
  flow: FlowSlice;
  /** The opening's own chart; each scenario stands in it as a state where it ends. */
  chart: ChartConfig;
  scenarios: string[];
  /** The few scenarios that the opening can still lead to after some answers, by those answers, joined by blanks. */
  ahead: Record<string, string[]>;
};

/** One scenario, as the build has compiled it. `flow` comes on top of what every session starts with. */
export type ScenarioData = {
  id: string;
  flow: Pick<FlowSlice, "hazards" | "gates" | "causes" | "parts" | "searches" | "lasting">;
  /** The scenario and the endings. */
  chart: ChartConfig;
  diagnosis: Diagnosis;
};

/** A scenario ready to go on in. */
export type LoadedScenario = { id: string; flow: FlowSlice; chart: Chart; diagnosis: Diagnosis };

/** What sessions run on: the opening, and the scenarios that have been loaded so far. */
export type Guide = StartData & {
  opening: Chart;
  loaded: Map<string, LoadedScenario>;
  advisers: Advisers;
};

/** The guide before any scenario is loaded. @param advisers where another order of checks than the advised one is wished */
export function createGuide(start: StartData, advisers: Advisers = createAdviser): Guide {
  const opening = createChart(start.chart, start.flow.limits);
  return { ...start, opening, loaded: new Map(), advisers };
}

/** Adds a scenario, for every session that goes by this guide. */
export function addScenario(guide: Guide, { id, flow, chart, diagnosis }: ScenarioData): void {
  const { gates, hazards, causes, parts, lasting, ...shared } = guide.flow;
  const whole: FlowSlice = {
    ...shared,
    gates: { ...gates, ...flow.gates },
    hazards: { ...hazards, ...flow.hazards },
    causes: { ...causes, ...flow.causes },
    parts: { ...parts, ...flow.parts },
    lasting: [...lasting, ...flow.lasting],
    searches: flow.searches,
  };
  guide.loaded.set(id, { id, flow: whole, chart: createChart(chart, whole.limits), diagnosis });
}

/** A session leads to a scenario that the guide does not have yet. Load it, and do the same again. */
export class ScenarioMissing extends Error {
  readonly scenario: string;
  constructor(scenario: string) {
    super(`The scenario "${scenario}" is not loaded`);
    this.scenario = scenario;
  }
}
