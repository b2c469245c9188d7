import type { Fact } from "../session/index.ts";

/** What an agent suggests; none of it does anything before a tap of the householder's. */
export type Suggested =
  /** An answer of the turn that is open, marked where it stands. */
  | { kind: "point"; turn: string; answer: string }
  | { kind: "propose"; turn: string; answer: string; why: string }
  | { kind: "propose"; check: string; why: string }
  | { kind: "propose"; ending: "fixed" | "professional"; why: string }
  | { kind: "correct"; model: string; why: string }
  /** What the householder said by voice, as the agent heard it. */
  | { kind: "told"; facts: Fact[]; words: string };

/** One suggestion that nobody has answered yet: its number in the room, and who made it. */
export type OpenSuggestion = { id: number; name: string; suggested: Suggested };

/** What became of a suggestion; `past`: it can't be taken any more, or not there. */
export type Fate = "taken" | "declined" | "past";

/** A room in which the shop's people can see this search, as the householder's screen shows it. */
export type LiveRoom = {
  /**
   * `coming`: nobody has answered yet. `elsewhere`: another tab has it. `unused`: its code has run out. `unable`: the relay
   * takes nobody in now.
   */
  is: "coming" | "open" | "elsewhere" | "ended" | "unused" | "unable";
  /** Whether there is a line just now. */
  isUp: boolean;
  /** What an agent types to join; `until` is an instant of this device, milliseconds since 1970. Null once it is used. */
  code: { text: string; until: number } | null;
  /** Those who wait to be let in, and those who see the search. */
  asking: readonly { id: string; name: string }[];
  inside: readonly { id: string; name: string }[];
  /** Who was in last and has left; empty where nobody has. */
  left: string;
  isPaused: boolean;
  /** The room takes no more: what is answered from now on is not seen. */
  isFull: boolean;
  /** What both wrote, in its order; `name` is null for the householder's own. */
  lines: readonly { id: string; name: string | null; text: string }[];
  open: readonly OpenSuggestion[];
};

/** Help by the shop's people, who can see the search once they are let in. */
export type Live = {
  /** Whether somebody can be asked now: it is opening hours, and nobody was asked yet. */
  isOffered(): boolean;
  /** Null while nobody was asked. */
  room(): LiveRoom | null;
  /** Calls `changed` whenever any of that may have changed. Returns a function that ends it. */
  watch(changed: () => void): () => void;
  /** Asks for somebody: a room is opened, and its code shown. @param why where that was asked for, for the page */
  ask(why: "menu" | "ending" | "help"): void;
  letIn(id: string): void;
  turnAway(id: string): void;
  pause(isPaused: boolean): void;
  newCode(): void;
  /** Ends it for everybody, or takes what is said of its end off the screen. */
  end(): void;
  /** Takes it into this tab. */
  bringHere(): void;
  /** Writes a line to those inside; false where that is too long, or nobody may see it now. */
  write(text: string): boolean;
  /** Says what became of a suggestion. */
  answer(id: number, is: Fate): void;
  /** Goes on with this check after the open question, if the chart allows it then. */
  lookNext(check: string): void;
};
