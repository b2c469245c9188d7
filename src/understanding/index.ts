export { type Aside, type AsideAbout, type Asides, asideOf, type Said } from "./aside.ts";
export { readDigits, writeDigits } from "./digits.ts";
export { type Features, featuresOf, wordMark } from "./features.ts";
export { type LanguageWords, type Model, type ModelData, readModel, sameOf } from "./model.ts";
export { codesIn, understand } from "./understand.ts";
export type { Context, Fact, Understood } from "./understood.ts";
export { longestSentence, wordsOf } from "./words.ts";
