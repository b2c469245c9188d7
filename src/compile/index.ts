export { type Compiled, compileFlow, compileGuide, guideOf, inRegion } from "./compile.ts";
export { composeChart } from "./compose.ts";
export { confirmerOf } from "./fixed.ts";
export { hazardsOf, hazardsOfTurn } from "./hazards.ts";
export { partsOfCheck } from "./parts-of-check.ts";
export { keepersOf, needsOf, restorersOf } from "./preparations.ts";
export { causesOf, learnableCauses, modelLimits } from "./shares.ts";
export { isWaitForIce } from "./wait-for-ice.ts";
export { chanceOf } from "./worlds.ts";
