declare module "virtual:first-turns" {
  /** What the first file knows by heart, in its own language. */
  const own: import("../turn/index.ts").FirstTurn;
  export default own;
}
declare module "virtual:languages" {
  /** The languages that have texts, by BCP 47 tag; the first is the fallback. */
  const languages: string[];
  export default languages;
}
declare module "virtual:data" {
  /** The languages that have texts, by BCP 47 tag; the first is the fallback. */
  export const dataFiles: Record<string, string>;
  /** Where all that every session starts with lies in a language. */
  export function dataAddress(language: string): string;
  /** Where the opening lies in a language other than the first file's own. */
  export function firstTurnAddress(language: string): string;
  /** Where the engine lies. */
  export function engineAddress(): string;
}
declare module "virtual:desk" {
  /** The desk's own texts, by BCP 47 tag; the first is the fallback. */
  export const deskTexts: Record<string, import("../turn/index.ts").Resource>;
  /** Where all that every session starts with lies in a language, seen from the desk's script. */
  export function dataAddress(language: string): string;
  /** Where a drawing lies in a language, likewise. */
  export function drawingAddress(id: string, language: string): string;
}
declare module "virtual:later" {
  /** Where a piece of script lies that comes after the engine. */
  export function chunkAddress(
    chunk:
      | ("door" | "later-screens" | "shop" | "photo" | "words" | "cut-open" | "carry")
      | ("live" | "live-screens" | "care-screens" | "insight" | "dress"),
  ): string;
  /** Where a drawing lies in a language. */
  export function drawingAddress(id: string, language: string): string;
}
declare module "virtual:cut-open" {
  /** The machine cut open. */
  export const drawing: import("../panel/cut-open/index.ts").CutOpenDrawing;
}
declare module "virtual:words" {
  /** Where a language's model and side answers lie. */
  export function wordsAddress(language: string): string;
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
declare module "virtual:live" {
  /** What is said while the shop's people help, by language. */
  export const liveTexts: Record<string, import("../turn/index.ts").Resource>;
}
declare module "virtual:care" {
  /** What is said after an ending: its rules, and its texts by language. */
  export const careRules: import("../care/index.ts").CareRules;
  export const careTexts: Record<string, import("../turn/index.ts").Resource>;
}
declare module "virtual:plate" {
  /** The files that read plates: the folder that is named by their content, and how much they are in bytes. */
  export const plateFiles: { version: string; bytes: number };
  /** What stands beside a photo, by language. */
  export const plateTexts: Record<string, import("../turn/index.ts").Resource>;
}
