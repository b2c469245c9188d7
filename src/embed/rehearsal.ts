import type { PanelProps } from "../panel/frame/index.ts";
import type { Turn } from "../turn/index.ts";
import { paint } from "./paint.ts";

/** By kind of screen, for as long as the page lives. */
const drawn = new Set<string>();

/**
 * Draws a turn where nobody sees it, the first time that one of its kind comes near: a slow phone takes twice as long
 * for what it has never drawn. It is taken away within the same task, before any effect of its screen has run.
 * @param props of the panel as it would be drawn, and whose actions nothing here calls
 */
export function rehearse(turn: Turn, { view, services, ...props }: PanelProps): void {
  const { kind, reading, picture } = turn;
  // An ending looks its part up.
  if (kind === "ending" || (kind !== "choice" && !props.screens?.[kind])) return;
  const name = `${kind} ${reading?.instrument} ${!picture}`;
  if (drawn.has(name)) return;
  drawn.add(name);
  const place = document.createElement("div") as never as ShadowRoot;
  paint(place, { ...props, view: { ...view, turn }, services: { ...services, signal: () => {} } });
  paint(place, null);
}
