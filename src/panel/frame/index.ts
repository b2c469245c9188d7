import controlsSheet from "./controls.css?inline";
import openingSheet from "./opening.css?inline";
import panelSheet from "./panel.css?inline";

export { Answers } from "./answers.tsx";
export { Ask } from "./ask.tsx";
export { Before, Tile } from "./before.tsx";
export { isBounce, type Tap } from "./double-tap.ts";
export { Hazards, SignalPanel, worstOf } from "./hazards.tsx";
export { Lines } from "./lines.tsx";
export type { Trouble } from "./loading.tsx";
export { Notices } from "./notices.tsx";
export { Panel, type PanelProps } from "./panel.tsx";
export type { ComposerProps, HeardProps, MoreProps, ScreenProps, Screens } from "./screens.ts";
export { State } from "./state.tsx";
/** The rules of the first file, for `adoptedStyleSheets`. */
export const firstSheet = panelSheet + controlsSheet + openingSheet;
