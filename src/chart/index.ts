export type { ChartConfig, StateConfig, Transition, TurnMeta } from "./config.ts";
export { holds, joins, vocabulary } from "./guards.ts";
export { changedIn, type LeftWord, leftWords } from "./left.ts";
export {
  type Advice,
  type Call,
  type ChartContext,
  type ChartEvent,
  createMemory,
  type Finding,
  inherit,
  type Note,
  remember,
  type Stand,
} from "./memory.ts";
export { proofTurns } from "./proof-turns.ts";
export { restoreChart, type ShortChart, shortenChart } from "./short-chart.ts";
export type { FlowSlice } from "./slice.ts";
