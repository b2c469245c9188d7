export { bounds } from "./bounds.ts";
export { createLog, type Log, type LogEvent, parseEvent, parseLog } from "./log.ts";
export { longestWords } from "./longest-words.ts";

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

export { straightenTimes } from "./times.ts";
