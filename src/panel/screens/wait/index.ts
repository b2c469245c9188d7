export { WaitScreen } from "./wait.tsx";
