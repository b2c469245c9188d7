/** What a shop sells for which machine, and which machine a typed code means. */
export { bounds } from "./bounds.ts";
export { type Condition, compareSerials, type Plate } from "./condition.ts";
export { minorDigits } from "./currency.ts";
export { codeDistance, editCosts, markDifferences } from "./edit-distance.ts";
export { baseOf } from "./ending.ts";
export { type FitResult, partFor } from "./fitment.ts";
export { isManifest } from "./is-manifest.ts";
export { type FindResult, findModel } from "./matching.ts";
export {
  codeText,
  foldCode,
  isMisreading,
  longestCode,
  normaliseCode,
} from "./model-code.ts";
export { isOneSlip } from "./one-slip.ts";
export {
  type Catalogue,
  type CatalogueProblem,
  type Part,
  parseCatalogue,
  parseInSteps,
  type SoldPart,
} from "./schema.ts";
export { plainText, safeLink } from "./untrusted-text.ts";
