export { type Belief, createBelief, failedFix, probabilities, updateBelief } from "./belief.ts";
export { type Choice, chooseNext, choosing } from "./choose.ts";
export { type Explanation, explain } from "./explain.ts";
export { type Among, createModel, type Model, readModel } from "./model.ts";
export type { Stakes, State } from "./position.ts";
export { finish, type Steps } from "./steps.ts";
export {
  type CauseInput,
  type CheckInput,
  type ModelInput,
  type ProofStep,
  type Remedy,
  signs,
  type Tables,
  tablesOf,
} from "./tables.ts";
export { mostTelling } from "./telling.ts";
