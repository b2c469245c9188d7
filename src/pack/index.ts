export { type BuiltIn, checkPack, type PackData, UnusablePack } from "./pack.ts";
export type { KnownDangers } from "./shapes.ts";
