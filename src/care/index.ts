export { answered, daysSince, questionOf } from "./asking.ts";
export { type Kept, type KeptSearch, keptBounds, nothingKept, parseKept } from "./kept.ts";
export { endedAt, filterUntil, noteEnding } from "./note.ts";
export { filterOf, isFilterNear, recordOf } from "./record.ts";
export type { CareRules, CareStepRule } from "./rules.ts";
export { isForMachine, stepsOf } from "./steps.ts";
