import type { Flow } from "../guide/index.ts";
import type { Drawings } from "../panel/pictures/index.ts";
import type { Resource } from "../turn/index.ts";

/** What was fetched for the engine: everything that was compiled for one language. */
export type EngineData = {
  format: 1;
  flow: Flow;
  resources: Record<string, Resource>;
  drawings: Drawings;
};
