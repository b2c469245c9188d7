/*
 * What only some shops need, loaded by the engine when it is asked for. One file of all, because two would make a
 * third of what they share with the engine, and everybody would wait for that.
 */
import { knownDangers } from "virtual:dangers";
import type { StartFile } from "./engine-data.ts";
import { fetchShopFlows } from "./shop-flows.ts";

export { parseJsonInSteps } from "./json-in-steps.ts";
export { openManyFiles } from "./many-files.ts";

/** A shop's own flows, judged by what the built-in guide knows of dangers. */
export const fetchOwnFlows = (folder: string, language: string, built: StartFile) =>
  fetchShopFlows(folder, language, { ...built, known: knownDangers }, fetch);
