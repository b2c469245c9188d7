import type { OwnFile } from "../own-files/index.ts";

/** A file as the bundler made it; `chunk` is the name of a piece of script, `map` its source map (ECMA-426) as JSON. */
export type BuiltFile = OwnFile & { chunk?: string; map?: string };

/** The first file's chunk, of which one copy a language is made. */
export const firstChunk = "first";

/** The files that are asked for when they are near; some of them a second time, at an address that is made up. */
export const laterChunks = [
  "engine",
  "later-screens",
  "door",
  "shop",
  "for-some-shops",
  "photo",
  "words",
  "cut-open",
  "carry",
  "live",
  "live-screens",
  "care-screens",
  "insight",
  "dress",
];

/** Those that may come before the door has. */
export const beforeDoor = [
  "later-screens",
  "cut-open",
  "live",
  "live-screens",
  "care-screens",
  "insight",
  "dress",
];

/** Stands in the script where the address of a chunk belongs, until it has its name. */
export const placeOf = (chunk: string) => `chunk:${chunk}`;

/** Stands in the first file where a language's own texts belong. */
export const textsPlace = "texts-of-this-language";

/** What a language's texts for the first file are called, for tags in another language than their first file. */
export const textsPath = /^parts\/first-([\w-]+)-[0-9a-f]{8}\.json$/;

/** A first file's name; it stays, all others are named by their content. */
export const firstFileOf = (language: string) => `fridgeside.${language}.js`;
