export { ModelScreen } from "./model-code.tsx";
