import type { ComponentType } from "preact";
import type {
  Actions,
  AsideAbout,
  Ending,
  Line,
  Notice,
  Reply,
  Services,
  Texts,
  Turn,
  View,
  Words,
} from "../../turn/index.ts";

/** What the screen of one turn is given. `busy` is true from a tap until the next view: buttons then do nothing. */
export type ScreenProps = {
  turn: Turn;
  actions: Actions;
  services: Services;
  texts: Texts;
  busy: boolean;
  /** Draws a picture by its id, or nothing for an id it does not know. */
  picture: ComponentType<{ id: string }>;
};

/** The ways out that every turn has. */
export type Way = "danger" | "ice" | "help" | "restart";

/** What the field at the panel's end is given; `heard` says what was understood, and comes with the later screens. */
export type ComposerProps = ScreenProps & {
  view: View;
  heard: Screens["heard"] | undefined;
  /** Draws the turn's screen anew, from what is in its draft. */
  refill(): void;
};

export type HeardProps = Omit<ComposerProps, "heard" | "refill"> & {
  sent: string;
  reply: Reply;
  words: Words;
  about: AsideAbout;
  /** What is said next; null where nothing is left to say. */
  decide(reply: Reply | null): void;
};

/** What the menu's later entries are given: whether the menu is open, and what shuts it before an act. */
export type MoreProps = {
  view: View;
  actions: Actions;
  services: Services;
  texts: Texts;
  isListed: boolean;
  leave(act: () => void): void;
};

/**
 * What arrives with the engine, or after it: a screen for every kind of turn but `choice`, what we had changed, what
 * stands before and after the steps, the field where anything can be said and what is said to it, what is asked before
 * an answer is changed, more entries of the menu, notices, an ending's sign, and the pictures. The opening needs none of them, and its file has to be small.
 */
export type Screens = { gate: ComponentType<ScreenProps> } & Partial<
  Record<"reading" | "model" | "wait" | "ending", ComponentType<ScreenProps>> & {
    composer: ComponentType<ComposerProps>;
    heard: ComponentType<HeardProps>;
    more: ComponentType<MoreProps>;
  }
> & {
    state: ComponentType<{ turn: Turn; texts: Texts }>;
    before: ComponentType<{ turn: Turn; texts: Texts; picture: ScreenProps["picture"] }>;
    after: ComponentType<{ turn: Turn; texts: Texts; picture: ScreenProps["picture"] }>;
    notices: ComponentType<{ notices: Notice[]; means: string; goOn(): void }>;
    changing: ComponentType<{ line: Line; texts: Texts; act(): void; close(): void }>;
    badge: ComponentType<{ outcome: Ending["outcome"]; texts: Texts }>;
    picture: ComponentType<{ id: string }>;
  };
