export { checkPack, type PackData, UnusablePack } from "./pack.ts";
