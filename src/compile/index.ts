export { type Chart, createChart } from "./chart.ts";
export { type Charts, createCharts } from "./charts.ts";
export { composeChart } from "./compose.ts";
export { slimFlow } from "./slim-flow.ts";
