export { flowBounds, listOf, recordOf } from "./bounds.ts";
export { dangersOf } from "./dangers.ts";
export type {
  CauseRule,
  Check,
  Condition,
  Flow,
  GateRule,
  Instrument,
  Leaves,
  Limits,
  Opening,
  Outcome,
  PartRule,
  ReadingVerdict,
  Scenario,
  Signal,
  TurnRule,
} from "./flow.ts";
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
export { assembleFlow, type FileKind, fileKind, fileSchemas, id, number, unit } from "./schema.ts";
export { type Path, textsNeeded } from "./texts-needed.ts";
export { verdictsOf } from "./verdicts.ts";
