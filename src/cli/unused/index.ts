import { i18next } from "./i18next.ts";
import { preact } from "./preact.ts";
import type { Unused } from "./unused.ts";
import { xstate } from "./xstate.ts";
import { zod } from "./zod.ts";

export { applyEdits, findUnused, type Node } from "./find-unused.ts";
export { entriesOf, type Unused } from "./unused.ts";

/** By the name of the package. */
export const unusedParts: Record<string, Unused> = { i18next, preact, xstate, zod };
