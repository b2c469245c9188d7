export { createFoot } from "./foot.tsx";
export { Heard } from "./heard.tsx";
