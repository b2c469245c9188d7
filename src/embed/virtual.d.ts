declare module "virtual:first-turns" {
  const firstTurns: Record<string, import("../turn/index.ts").FirstTurn>;
  export default firstTurns;
}
declare module "virtual:data" {
  /** The languages that have texts, by BCP 47 tag; the first is the fallback. */
  export const dataFiles: Record<string, string>;
  /** Where all that every session starts with lies in a language. */
  export function dataAddress(language: string): string;
  /** Where the engine lies a second time, tied to a copy of the first file that is named by its content. */
  export const againAddress: string;
}
declare module "virtual:dangers" {
  /** What is dangerous where, by the built-in guide. */
  export const knownDangers: import("../pack/index.ts").KnownDangers;
}
declare module "*.css?inline" {
  const css: string;
  export default css;
}
declare module "*?url&no-inline" {
  /** Where the built file lies. */
  const address: string;
  export default address;
}
