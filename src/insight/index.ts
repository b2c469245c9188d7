export { insightBounds } from "./bounds.ts";
export { type InsightLine, insightLine, readLine } from "./line.ts";
