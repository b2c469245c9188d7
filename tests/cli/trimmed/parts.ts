/* What the trimmed script is compared by: everything of it that needs no page. */
export { createCharts, createListAdviser } from "../../../src/flow/index.ts";
export { createTexts, record, startSession, viewOf } from "../../../src/session/index.ts";
