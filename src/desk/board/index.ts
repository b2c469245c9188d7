/** What a room comes to on an agent's desk, in plain data. */
export { type Board, boardOf } from "./board.ts";
export { type CauseRow, causesOf, type Ground, weightsOf } from "./causes.ts";
export { type ChartCheck, chartChecksOf } from "./chart-checks.ts";
export { matching, type Sayable, sayableIn } from "./facts.ts";
export { type JournalRow, journalRowsOf } from "./journal-rows.ts";
export { modelIn, type RoomLine, type RoomState, roomLineOf, sorted } from "./room-line.ts";
export {
  choicesAt,
  fateOf,
  type NextCheck,
  nextChecksOf,
  pointedAt,
  suggestionText,
} from "./suggesting.ts";
