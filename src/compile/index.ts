export { type Compiled, compileFlow, compileGuide } from "./compile.ts";
export { composeChart } from "./compose.ts";
export { isWaitForIce } from "./wait-for-ice.ts";
export { keepersOf, reopenerOf } from "./water.ts";
