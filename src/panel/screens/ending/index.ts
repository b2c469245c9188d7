export { createEnding, EndingScreen } from "./ending.tsx";
