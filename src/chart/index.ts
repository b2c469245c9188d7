export type { ChartConfig, StateConfig, Transition, TurnMeta } from "./config.ts";
export { holds, vocabulary } from "./guards.ts";
export {
  type Advice,
  type Call,
  type ChartContext,
  type ChartEvent,
  createMemory,
  type Finding,
  type Note,
  remember,
  type Water,
} from "./memory.ts";
export { proofTurns } from "./proof-turns.ts";
export { restoreChart, type ShortChart, shortenChart } from "./short-chart.ts";
export type { FlowSlice } from "./slice.ts";
export { waterWord } from "./water.ts";
