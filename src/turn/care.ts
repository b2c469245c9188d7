import type { Gate, Handover } from "./turn.ts";

/** When steps of care are told of: from day to day, before some time away, and after it. */
export type CareTime = "use" | "away" | "return";

/** A step in words. `gate`: it is shown once all of that gate is confirmed, each time. */
export type CareLine = { id: string; text: string; gate: CareGate | null };

/** A gate before a step of care: its own signal word and lines, and why. */
export type CareGate = Pick<Gate, "id" | "signal" | "items" | "facts"> & { why: string };

/** What is asked a day or more after an ending, in words. */
export type CareQuestion = { ask: string; answers: { id: CareAnswer; text: string }[] };

/** `not-yet`: nobody has mended it yet, and it is asked again another day. */
export type CareAnswer = "yes" | "no" | "not-yet";

/** Until when the water filter is good, 'YYYY-MM-DD'; null where nobody knows. `isOver`: that day has come. */
export type FilterDue = { day: string; isOver: boolean } | null;

/** What is kept of a machine after its searches, and what is said of it. */
export type Care = {
  question(): CareQuestion | null;
  answer(answer: CareAnswer): void;
  steps(time: CareTime): CareLine[];
  filter(): FilterDue;
  /** Whether this machine may have a water filter. */
  hasFilter(): boolean;
  /** The filter was changed today. */
  filterChanged(): void;
  /** The record on a page; without parts where nothing is kept. */
  machine(): Handover;
};
