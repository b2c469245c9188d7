export { insightBounds } from "./bounds.ts";
export type { FridgesideEventName, FridgesideEvents } from "./events.ts";
export { type InsightLine, insightLine, readLine } from "./line.ts";
