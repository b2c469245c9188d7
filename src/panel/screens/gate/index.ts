export { GateScreen } from "./gate.tsx";
