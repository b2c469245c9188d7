import type { FindResult, FitResult, Plate } from "../catalogue/index.ts";

/** What a search for a typed model code gave; screens get it through the session's door, never from the catalogue. */
export type FoundModel = FindResult;

/** What the catalogue has for a confirmed model code and a part kind. */
export type FoundPart = FitResult;

/** How many decimals a price has. */
export { minorDigits } from "../catalogue/index.ts";
/** What a person read off the plate beside the model code; null where they could not. */
export type { Plate };
