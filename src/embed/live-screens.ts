import { liveTexts } from "virtual:live";
import { createLiveBar, createLiveCards, liveSheet } from "../panel/live/index.ts";

const sheet = new CSSStyleSheet();
sheet.replaceSync(liveSheet);

/** What is shown while the shop's people help: a file of its own with its rules and texts, which few phones fetch. */
export const LiveBar = createLiveBar(sheet);
export const LiveCards = createLiveCards(sheet);
export { liveTexts };
