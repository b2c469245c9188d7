export { flowBounds, id, listOf, type Path, recordOf } from "../condition/index.ts";
export { type Limits, lastRegion, limitOf, type Region, regionIn } from "../measuring/index.ts";
export { anythingElse } from "./anything-else.ts";
export { dangersOf } from "./dangers.ts";
export type {
  CareRule,
  CareStep,
  CareTime,
  CauseRule,
  Check,
  CheckOutcome,
  Flow,
  GateRule,
  Machine,
  Opening,
  Outcome,
  PartRule,
  Scenario,
  Signal,
  Spread,
  States,
  TurnRule,
} from "./flow.ts";
export {
  byPlugInstead,
  everyPreparation,
  type Preparation,
  type Prepared,
  preparations,
  stateAfter,
  statesIn,
} from "./preparations.ts";
export { prepared } from "./prepared-shape.ts";
export { region } from "./region.ts";
export { assembleFlow, type FileKind, fileKind, fileSchemas, number, unit } from "./schema.ts";
export { careTimes, textsNeeded } from "./texts-needed.ts";
