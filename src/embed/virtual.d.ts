declare module "virtual:first-turns" {
  const firstTurns: Record<string, import("../session/index.ts").FirstTurn>;
  export default firstTurns;
}
declare module "virtual:data" {
  /** Where the compiled flow lies. */
  export function flowAddress(): string;
  /** Where a language's texts lie, its fallback's included. */
  export function textsAddress(language: string): string;
  /** The languages that have texts, by BCP 47 tag; the first is the fallback. */
  export const textFiles: Record<string, string>;
}
declare module "*.css?inline" {
  const css: string;
  export default css;
}
declare module "*.css?url&no-inline" {
  /** Where the built style sheet lies. */
  const address: string;
  export default address;
}
