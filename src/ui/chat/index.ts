import firstSheet from "./panel.css?inline";

export { Answers } from "./answers.tsx";
export { Before } from "./before.tsx";
export { Hazards, SignalPanel } from "./hazards.tsx";
export { Lines } from "./lines.tsx";
export { Panel, type PanelProps } from "./panel.tsx";
export type { ScreenProps, Screens } from "./screens.ts";
export { WayOut } from "./way-out.tsx";

/** The rules of the first file, for `adoptedStyleSheets`. */
export { firstSheet };
