import { readFlow } from "../src/workbench/build/flows-folder.ts";
import { readLocales } from "../src/workbench/build/locales-folder.ts";
import { frozen } from "./frozen.ts";

/*
 * What nearly every test starts from, read once for all files that a worker runs. It is frozen: a test that needs
 * another flow makes a copy.
 */

/** The project's own flows, as `readFlow` reads them. */
export const ownFlow = frozen(readFlow());

/** The project's own texts, as `readLocales` reads them. */
export const ownTexts = frozen(readLocales());
