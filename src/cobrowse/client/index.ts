/** What the householder's device and the agent's desk share: a line that comes back, and what a room's log comes to. */
export { type Client, createClient, type Line, type Means, type OnLine } from "./client.ts";
export { createEnd, type End, type EndMeans, type KeptEnd, type Place, type Told } from "./end.ts";
export { emptyRoom, type Person, type Said, type SharedRoom, withRecord } from "./room.ts";
export { bodiesFor, journalIn } from "./shared-journal.ts";
export {
  endings,
  type Heard,
  readSuggestion,
  type Suggestion,
  sendable,
  suggestionBounds,
} from "./suggestion.ts";
