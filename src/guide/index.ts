export { flowBounds, id, listOf, type Path, recordOf } from "../condition/index.ts";
export { dangersOf } from "./dangers.ts";
export type {
  CauseRule,
  Check,
  Flow,
  GateRule,
  Groundwork,
  Instrument,
  Leaves,
  Limits,
  Opening,
  Outcome,
  PartRule,
  ReadingVerdict,
  Scenario,
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
export { assembleFlow, type FileKind, fileKind, fileSchemas, number, unit } from "./schema.ts";
export { textsNeeded } from "./texts-needed.ts";
export { verdictsOf } from "./verdicts.ts";
