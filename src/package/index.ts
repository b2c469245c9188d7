/** What a shop's own script imports: the tag's types, and a way to load the panel from where `fridgeside build` wrote it. */

export type { FridgesideEventName, FridgesideEvents } from "../insight/index.ts";
export { loadPanel, type PanelHome } from "./load-panel.ts";
export type { FridgesideEventMap, PanelAttributes, PanelElement } from "./tag.ts";
