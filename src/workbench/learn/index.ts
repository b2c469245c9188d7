export { type Estimate, type Learnt, type LearntCause, type LearntError, learnFrom } from "./learn.ts";
export { countSearch, createSearches, type Searches } from "./searches.ts";
