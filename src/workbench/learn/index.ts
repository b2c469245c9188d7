export { type CauseCounts, countCause, type Learnt, learnShares } from "./learn.ts";
