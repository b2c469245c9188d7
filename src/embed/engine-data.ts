import type { Drawings } from "../panel/pictures/index.ts";
import type { StartData } from "../session/index.ts";
import type { Resource } from "../turn/index.ts";

/** What every session starts with in one language, as it was compiled. */
export type EngineData = StartData & {
  format: 2;
  resources: Record<string, Resource>;
  drawings: Drawings;
  /** Where each scenario's own file lies, seen from this one. */
  files: Record<string, string>;
};
