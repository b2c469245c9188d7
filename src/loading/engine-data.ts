import type { ShortChart } from "../chart/index.ts";
import type { ScenarioData, StartData } from "../session/index.ts";
import type { Resource } from "../turn/index.ts";

/** What every session starts with in one language, as it was compiled. */
export type EngineData = StartData & {
  format: 2;
  resources: Record<string, Resource>;
  /** Where each scenario's own file lies, seen from this one. */
  files: Record<string, string>;
};

/** A shop's own flows in one language: all that can be fetched of ours comes in one file with them. */
export type OwnFlows = { start: EngineData; scenarios: ScenarioData[] };

/** The same as its file has it. */
export type StartFile = Omit<EngineData, "chart"> & { chart: ShortChart };
