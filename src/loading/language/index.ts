export { chooseLanguage, matchLanguage, type ReadAttribute } from "./language.ts";
