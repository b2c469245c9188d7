export type * from "./actions.ts";
export { bounds } from "./bounds.ts";
export { type Lexicon, suggest } from "./described.ts";
export { endingOf } from "./ending-of.ts";
export { createFirstTurns, type FirstTurn } from "./first-turns.ts";
export { createNumbers, showList } from "./formats.ts";
export { linesOf } from "./lines.ts";
export { createLog, type Log, type LogEvent, parseEvent, parseLog } from "./log.ts";
export { minorDigits } from "./lookups.ts";
export { isOtherModel, type MachineAnswer, machineTurn, machineView } from "./machine.ts";
export { checkPack, type PackData, UnusablePack } from "./pack.ts";
export {
  changeAnswer,
  holdTimes,
  isStopped,
  memoryOf,
  metaOf,
  type Recorded,
  type Refusal,
  record,
  replay,
  resume,
  type Session,
  settle,
  startSession,
  stopBy,
  takeOver,
  waterLeftBy,
} from "./session.ts";
export { createTexts, type Resource } from "./texts.ts";
export { straightenTimes } from "./times.ts";
export type * from "./turn.ts";
export { turnOf } from "./turn-of.ts";
export { viewOf } from "./view.ts";
