export { type Advice, type Adviser, createAdviser, createListAdviser } from "./adviser.ts";
export { entryGuards, rulesOf } from "./moves.ts";
