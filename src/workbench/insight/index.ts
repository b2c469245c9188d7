export { drawSummary, summaryPage } from "./draw.ts";
export { type Summary, summarise } from "./summary.ts";
export { countLine, createTally, type Tally } from "./tally.ts";
export { printSummary } from "./words.ts";
