export { EndingScreen } from "./ending.tsx";
