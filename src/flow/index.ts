export { type Advice, type Adviser, createAdviser, createListAdviser } from "./advice/index.ts";
export { verdictOn } from "./assess.ts";
export { flowBounds, listOf, recordOf } from "./bounds.ts";
export { slimFlow } from "./bundle.ts";
export { type Chart, createChart } from "./chart.ts";
export { type Charts, createCharts } from "./charts.ts";
export { composeChart, dangersOf, proofTurns } from "./compose.ts";
export type { ChartConfig, StateConfig, Transition, TurnMeta } from "./config.ts";
export type { Check, Condition, Flow, Instrument, Limits, ReadingVerdict, Signal } from "./flow.ts";
export { findOpenHazards } from "./hazards.ts";
export type { ChartContext, ChartEvent, Finding, Water } from "./memory.ts";
export { findFlowFault, flowSections } from "./packed.ts";
export {
  cubesLimits,
  filterLimits,
  flowLimits,
  iceLimits,
  limitOf,
  sealLimits,
  supplyLimits,
  temperatureLimits,
} from "./reading-limits.ts";
export { assembleFlow, type FileKind, fileKind, fileSchemas } from "./schema.ts";
export { type WaterWord, waterWord } from "./water.ts";
