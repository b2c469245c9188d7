/** What a shop's own script imports: the tag's types, and a way to load the panel from where `fridgeside build` wrote it. */

export type { FridgesideEventMap, FridgesideEventName, FridgesideEvents } from "../embed/events.ts";
export { loadPanel, type PanelHome } from "./load-panel.ts";
export type { PanelAttributes, PanelElement } from "./tag.ts";
