export { flowLimits, limitOf, temperatureLimits, verdictOn } from "./assess.ts";
export { slimFlow } from "./bundle.ts";
export { type Chart, createChart } from "./chart.ts";
export { type Charts, createCharts } from "./charts.ts";
export { composeChart, dangersOf, proofTurns } from "./compose.ts";
export type { ChartConfig, StateConfig, Transition, TurnMeta } from "./config.ts";
export type { Check, Condition, Flow, Limits, Signal } from "./flow.ts";
export type { ChartContext, ChartEvent, Finding } from "./memory.ts";
export { assembleFlow, type FileKind, fileKind, fileSchemas } from "./schema.ts";
