export { type Compiled, compileFlow, compileGuide, guideOf, inRegion } from "./compile.ts";
export { composeChart } from "./compose.ts";
export { causesOf, modelLimits } from "./shares.ts";
export { isWaitForIce } from "./wait-for-ice.ts";
export { keepersOf, reopenerOf } from "./water.ts";
export { chanceOf } from "./worlds.ts";
