export { followList, type Last } from "./fixed-list.ts";
export { drawHome, type Home } from "./home.ts";
export { byFault, byScenario, hazardList, mainTable, shareTable, unknownList, worstFirst } from "./report.ts";
export { type Outcome, outcomeOf, sumUp } from "./tally.ts";
export { talk, type Visit } from "./visit.ts";
