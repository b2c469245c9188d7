export { type Adviser, createAdviser, createListAdviser } from "./adviser.ts";
export { layGroundwork } from "./groundwork.ts";
export { entryGuards, rulesOf } from "./moves.ts";
