import * as z from "zod/mini";
import { everyPreparation, type Preparation, preparations } from "./preparations.ts";

const stateOf = (one: Preparation) => {
  const { ours, left, back } = preparations[one];
  return z.optional(z.enum([ours, left, back]));
};

/** The shape of the states of some preparations. */
export const prepared = z.strictObject(
  Object.fromEntries(everyPreparation.map((one) => [one, stateOf(one)])),
);
