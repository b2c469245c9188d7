export { type Fault, faults } from "./faults/index.ts";
export { followList, type Last } from "./fixed-list.ts";
export { type Apart, drawHome } from "./home.ts";
export { reportOf, shareTable } from "./report.ts";
export { type Outcome, outcomeOf } from "./tally.ts";
export { traceOf } from "./trace.ts";
export { talk, type Visit } from "./visit.ts";
