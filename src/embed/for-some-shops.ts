/*
 * What only some shops need, loaded by the engine when it is asked for. One file of all, because two would make a
 * third of what they share with the engine, and everybody would wait for that.
 */
export { parseJsonInSteps } from "./json-in-steps.ts";
export { openManyFiles } from "./many-files.ts";
export { fetchShopFlows } from "./shop-flows.ts";
