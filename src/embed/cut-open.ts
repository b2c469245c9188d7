import { drawing } from "virtual:cut-open";
import { createScene, cutOpenSheet } from "../panel/cut-open/index.ts";

const sheet = new CSSStyleSheet();
sheet.replaceSync(cutOpenSheet);

/** The machine cut open: a file of its own with its drawing and its rules, which no phone fetches. */
export const CutOpen = createScene(drawing, sheet);
