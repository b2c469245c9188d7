export { type Belief, createBelief, failedFix, probabilities, updateBelief } from "./belief.ts";
export { type Choice, chooseNext } from "./choose.ts";
export { type Explanation, explain } from "./explain.ts";
export {
  type CauseInput,
  type CheckInput,
  createModel,
  type Model,
  type ModelInput,
  type ProofStep,
} from "./model.ts";
export type { Stakes, State } from "./position.ts";
