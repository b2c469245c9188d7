import type { Asides, ModelData } from "../understanding/index.ts";
import { createModel, type Size, usualSize } from "./model-of.ts";
import { askedOf, phrasesOf, sharedOf } from "./phrases.ts";
import type { Resource } from "./resource.ts";

/** What a phone fetches to understand one language. */
export type WordsData = { model: ModelData; asides: Asides };

/**
 * Trains a language, and puts the answers of its side questions beside.
 * @param phrases locales/<tag>/phrases, its own with those that it leans on
 * @param texts its texts, likewise
 */
export function createWordsData(phrases: Resource, texts: Resource, size: Size = usualSize): WordsData {
  const all = { ...texts, phrases };
  const words = {
    ...(phrases["words"] as object),
    readings: phrases["readings"],
    rules: phrases["danger-rules"],
    asked: askedOf(all),
  } as unknown as ModelData["words"];
  return {
    model: createModel(phrasesOf(all), words, sharedOf(all), size),
    asides: (texts["asides"] ?? {}) as unknown as Asides,
  };
}

/** A language's phrases with its own lines after those that it leans on: people in both places say both. */
export function withOwnLines(shared: Resource, own: Resource = {}): Resource {
  const keys = new Set([...Object.keys(shared), ...Object.keys(own)]);
  return Object.fromEntries(
    [...keys].map((key) => {
      const [theirs, mine] = [shared[key], own[key]];
      if (mine === undefined) return [key, theirs as Resource];
      if (theirs === undefined) return [key, mine];
      if (typeof theirs === "string" || typeof mine === "string") return [key, `${theirs}\n${mine}`];
      return [key, withOwnLines(theirs, mine)];
    }),
  );
}
