import type { ComponentType } from "preact";
import type { Actions, Ending, Services, Texts, Turn } from "../../session/index.ts";

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

/** What arrives with the engine: a screen for every kind of turn but `choice`, an ending's sign, and the pictures. */
export type Screens = Record<"gate" | "reading" | "model" | "wait" | "ending", ComponentType<ScreenProps>> & {
  badge: ComponentType<{ outcome: Ending["outcome"]; texts: Texts }>;
  picture: ComponentType<{ id: string }>;
};
