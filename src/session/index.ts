export type * from "./actions.ts";
export { type Lexicon, suggest } from "./described.ts";
export { endingOf } from "./ending-of.ts";
export { createFirstTurns, type FirstTurn } from "./first-turns.ts";
export { linesOf } from "./lines.ts";
export { createLog, type Log, type LogEvent, parseEvent, parseLog } from "./log.ts";
export { minorDigits } from "./lookups.ts";
export { isOtherModel, type MachineAnswer, machineTurn, machineView } from "./machine.ts";
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
} from "./session.ts";
export { createNumbers, createTexts, type Resource } from "./texts.ts";
export { straightenTimes } from "./times.ts";
export type * from "./turn.ts";
export { turnOf } from "./turn-of.ts";
export { viewOf } from "./view.ts";
