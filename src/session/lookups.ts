import type { Fitment, ModelMatch } from "../catalogue/index.ts";

/** What a search for a typed model code gave; screens get it through the session's door, never from the catalogue. */
export type FoundModel = ModelMatch;

/** What the catalogue has for a confirmed model code and a part kind. */
export type FittedPart = Fitment;
