export { createModel, type Size, usualSize } from "./model-of.ts";
export { askedOf, type Phrase, phrasesOf, sharedOf } from "./phrases.ts";
export { seeded, trainLabel } from "./train.ts";
export { createWordsData, type WordsData, withOwnLines } from "./words-data.ts";
