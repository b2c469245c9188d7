import liveSheet from "./live.css?inline";

export { createLiveBar } from "./bar.tsx";
export { createLiveCards } from "./cards.tsx";
/** The rules of this folder, for `adoptedStyleSheets`. */
export { liveSheet };
