import type { Asides, ModelData, Said } from "../understanding/index.ts";
import { createModel, type Size, usualSize } from "./model-of.ts";
import { askedOf, phrasesOf, sharedOf } from "./phrases.ts";
import type { Resource } from "./resource.ts";

/** What a phone fetches to understand one language. */
export type WordsData = { model: ModelData; asides: Asides; said: Said; tank: string };

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
    asks: phrases["ask-rules"] ?? {},
    asked: askedOf(all),
  } as unknown as ModelData["words"];
  return {
    model: createModel(phrasesOf(all), words, sharedOf(all), size),
    asides: (texts["asides"] ?? {}) as unknown as Asides,
    tank: String((phrases["words"] as Resource)["tank"] ?? ""),
    said: saidOf(words.facts.split(/\s+/), texts["checks"] as Resource),
  };
}

/** What may be told at any time, in the words of its turn: those of most turns are not on the phone yet when it is told. */
function saidOf(turns: string[], checks: Resource = {}): Said {
  return Object.fromEntries(
    turns.map((turn) => {
      const [check = "", state = ""] = turn.split(".");
      const texts = (checks[check] ?? {}) as Resource;
      const { name = texts["name"], answers } = (texts[state] ?? {}) as Resource;
      return [turn, { title: name, answers: answers ?? {} }];
    }),
  ) as Said;
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
