export { finish, type Steps } from "../diagnosis/index.ts";
export { type Adviser, type Advisers, createAdviser, createListAdviser } from "./adviser.ts";
export { shownIn } from "./learnt-from.ts";
export { movesAt, provedAt } from "./moves.ts";
export { type Ranked, rankMoves } from "./rank-moves.ts";
export type { Diagnosis, Meaning, MoveRule, Openings, Subject } from "./subject.ts";
