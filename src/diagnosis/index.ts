export { type Belief, createBelief, failedFix, probabilities, updateBelief } from "./belief.ts";
export { type Choice, chooseNext } from "./choose.ts";
export { type Explanation, explain } from "./explain.ts";
export { type Among, createModel, type Model, readModel } from "./model.ts";
export type { Stakes, State } from "./position.ts";
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
