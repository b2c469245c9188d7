export type { ChartConfig, StateConfig, Transition, TurnMeta } from "./config.ts";
export { type Advice, holds, vocabulary } from "./guards.ts";
export { findOpenHazards } from "./hazards.ts";
export {
  type ChartContext,
  type ChartEvent,
  createMemory,
  type Finding,
  type Note,
  remember,
  type Water,
} from "./memory.ts";
export { proofTurns } from "./proof-turns.ts";
export {
  closedByUs,
  keepersOf,
  mayGoOn,
  mustReopen,
  needsWater,
  reopenerOf,
  waterCanCome,
  waterNote,
  waterWord,
} from "./water.ts";
