import cutOpenSheet from "./cut-open.css?inline";

export type { CutOpenDrawing } from "./drawing.ts";
export { createScene } from "./scene.tsx";
export { sceneOf } from "./scene-of.ts";
/** The rules of this folder, for `adoptedStyleSheets`. */
export { cutOpenSheet };
