export { type Compiled, compileFlow, compileGuide } from "./compile.ts";
export { composeChart } from "./compose.ts";
export { keepersOf, reopenerOf } from "./water.ts";
export { isWaitForIce } from "./ways.ts";
