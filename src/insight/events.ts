/*
 * What the panel tells the page, for the shop's own analytics. Types alone: the package exports them.
 * Every event leaves from the tag, bubbles and is composed. None has what anybody typed.
 */

/** A question or an ending as flows/ names it, `check.turn`, such as `door-seal.paper-strip`. */
export type TurnId = string;

/** What kind of turn is on screen. */
export type TurnKind = "choice" | "gate" | "reading" | "model" | "wait" | "ending";

/** The `detail` of each event. Each is dispatched once for what it tells, in the tab in which it was done. */
export type FridgesideEvents = {
  /** The first answer of a search; `again` where it follows on 'Start again'. */
  "fridgeside-started": { again: boolean };
  /** Another turn is on screen. Neither a reload nor what another tab has done shows one anew. */
  "fridgeside-turn-shown": { turn: TurnId; kind: TurnKind; scenario: string | null };
  /**
   * An answer by its id, never by its words; a reading is `measured`, a model code `given`. `how`: tapped, taken from a
   * typed sentence, or said to an agent on the phone and confirmed.
   */
  "fridgeside-answered": { turn: TurnId; answer: string; how: "tapped" | "typed" | "said" };
  /** Somebody went back to an earlier turn; `drops` answers are no longer in force, though some may be put back. */
  "fridgeside-back": { turn: TurnId; drops: number };
  /** After that the turn was answered otherwise. */
  "fridgeside-changed": { turn: TurnId };
  /** Somebody wants a person: by the menu, at an ending, from the bar, or instead of more checks (`checks`). */
  "fridgeside-help-asked": { by: string; why: string };
  /** An agent was let in. */
  "fridgeside-help-joined": { by: string; why: string };
  /** The room was left or closed. */
  "fridgeside-help-left": { by: string; why: string };
  /** A danger was reported: an id of flows/opening.yaml, or `not-sure`. */
  "fridgeside-danger": { danger: string };
  /** A reading and what it came to; the number stays on the phone. */
  "fridgeside-reading-taken": { turn: TurnId; instrument: string; verdict: string };
  /** A part is offered: with the shop's number where its list has one for this model, else by its kind alone. */
  "fridgeside-part-shown": { kind: string; number: string | null; model: string | null };
  /** A part for the basket. The page calls one of the two. */
  "fridgeside-basket": {
    number: string;
    name: string;
    model: string;
    serial?: string;
    variant?: string;
    added(): void;
    failed(): void;
  };
  /** A search has ended: how, and with which cause and kind of part where one was established. */
  "fridgeside-ended": {
    outcome: "fixed" | "later" | "part" | "professional" | "stopped" | undefined;
    cause: string | null;
    part: string | null;
    model: string | null;
  };
  /** A day or more after an ending somebody said whether it works: `days` whole ones since it ended. */
  "fridgeside-lasted": {
    outcome: "fixed" | "part" | "professional";
    cause: string | null;
    works: boolean;
    days: number;
  };
  /** The page was hidden or closed in the midst of a search. Nobody can tell which; `returned` says who came back. */
  "fridgeside-left": { turn: TurnId; kind: TurnKind; scenario: string | null };
  "fridgeside-returned": { turn: TurnId };
  /** A sentence that nobody understood, or a model code that the shop's list has not: the fact, not the words. */
  "fridgeside-not-found": { what: "sentence" | "model"; turn: TurnId };
};

export type FridgesideEventName = keyof FridgesideEvents;
