import type { ComponentType } from "preact";
import type { Actions, Ending, Line, PathMark, Services, Texts, Turn } from "../../turn/index.ts";

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

/**
 * What arrives with the engine: a screen for every kind of turn but `choice`, the ice path, the earlier turns, what is said before
 * a check, a field for own words, an ending's sign, and the pictures. The first question needs
 * none of them, and its file has to be small.
 */
export type Screens = Record<"gate" | "reading" | "model" | "wait" | "ending", ComponentType<ScreenProps>> & {
  icePath: ComponentType<{ path: PathMark[]; label: string }>;
  lines: ComponentType<{ lines: Line[]; change(index: number): void; texts: Texts }>;
  before: ComponentType<{ turn: Turn; texts: Texts }>;
  ownWords: ComponentType<Pick<ScreenProps, "turn" | "actions" | "texts" | "busy">>;
  badge: ComponentType<{ outcome: Ending["outcome"]; texts: Texts }>;
  picture: ComponentType<{ id: string }>;
};
