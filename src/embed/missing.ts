import { ScenarioMissing } from "../session/index.ts";

/** Checks what was kept. */
export type Door = Pick<typeof import("./door.ts"), "parseJournal" | "parseBeside" | "createDrafts">;

/** What was kept cannot be checked yet: the code for that is still to be loaded. */
export class DoorMissing extends Error {}

/** Something that is loaded when it is near, and was needed before. */
export type Missing = ScenarioMissing | DoorMissing;

export const isMissing = (problem: unknown): problem is Missing =>
  problem instanceof ScenarioMissing || problem instanceof DoorMissing;
