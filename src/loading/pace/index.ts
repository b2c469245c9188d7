export { nextTask, waitForSignal, whenIdle } from "./next-task.ts";
