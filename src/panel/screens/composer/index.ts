export { Composer } from "./composer.tsx";
export { Heard } from "./heard.tsx";
