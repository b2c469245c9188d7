export { causesOf } from "./shares.ts";
export { chanceOf } from "./worlds.ts";
export { type Compiled, compileFlow, compileGuide, guideOf, inRegion } from "./compile.ts";
export { composeChart } from "./compose.ts";
export { isWaitForIce } from "./wait-for-ice.ts";
export { keepersOf, reopenerOf } from "./water.ts";
