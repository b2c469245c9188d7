import firstSheet from "./panel.css?inline";

export { Alert, Hazards } from "./hazards.tsx";
export { Panel, type PanelProps } from "./panel.tsx";
export type { ScreenProps, Screens } from "./screens.ts";

/** The rules of the first file, for `adoptedStyleSheets`. */
export { firstSheet };
