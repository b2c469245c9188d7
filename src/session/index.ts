export { finish, type Steps } from "../advice/index.ts";
export { type Answered, sameLater } from "./ahead.ts";
export { bounds } from "./bounds.ts";
export { carriedOf } from "./carried.ts";
export { changeAnswer, putBack, startAgain } from "./change.ts";
export { type Chart, createChart } from "./chart.ts";
export { parseEvent, parseJournal } from "./door.ts";
export { greetingOf } from "./greeting.ts";
export {
  addScenario,
  createGuide,
  type Guide,
  type ScenarioData,
  ScenarioMissing,
  type StartData,
} from "./guide.ts";
export {
  advance,
  append,
  compact,
  createJournal,
  type Held,
  journalOf,
  type Standing,
  standingOf,
  tell,
} from "./journal.ts";
export { createFeed, type Feed } from "./journal-feed.ts";
export type { Entry, Fact, Journal, Told } from "./journal-shape.ts";
export { createLog, inWords, type Log, type LogEvent, leavePrepared } from "./log.ts";
export { longestWords } from "./longest-words.ts";
export { holdTimes, replay, resume, settle, stopBy, takeOver } from "./replay.ts";
export {
  isStopped,
  leftOf,
  memoryOf,
  metaOf,
  type Recorded,
  type Refusal,
  record,
  recording,
  type Session,
  scenariosAhead,
  startSession,
  stillSo,
} from "./session.ts";
export { straightenTimes } from "./times.ts";
