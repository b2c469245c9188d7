export { bounds } from "./bounds.ts";
export { type Chart, createChart } from "./chart.ts";
export {
  addScenario,
  createGuide,
  type Guide,
  type ScenarioData,
  ScenarioMissing,
  type StartData,
} from "./guide.ts";
export { createLog, type Log, type LogEvent, parseEvent, parseLog } from "./log.ts";

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
  scenariosAhead,
  settle,
  startSession,
  stopBy,
  takeOver,
  waterLeftBy,
} from "./session.ts";

export { straightenTimes } from "./times.ts";
