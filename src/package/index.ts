/** What a shop's own script imports: the tag's types, and a way to load the panel from where `fridgeside build` wrote it. */
export { loadPanel, type PanelHome } from "./load-panel.ts";
export type { PanelAttributes, PanelElement, PanelEventName, PanelEvents } from "./tag.ts";
