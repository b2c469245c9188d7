export { type Limits, limitOf } from "../measuring/index.ts";
export { flowBounds, listOf, recordOf } from "./bounds.ts";
export { dangersOf } from "./dangers.ts";
export type {
  CauseRule,
  Check,
  Condition,
  Flow,
  GateRule,
  Leaves,
  Opening,
  Outcome,
  PartRule,
  Scenario,
  Signal,
  TurnRule,
} from "./flow.ts";
export { assembleFlow, type FileKind, fileKind, fileSchemas, id, number, unit } from "./schema.ts";
export { type Path, textsNeeded } from "./texts-needed.ts";
