import type { Deeds, Hooks } from "../scene.ts";
import { coldDeeds, coldHooks } from "./cold.ts";
import { iceDeeds, iceHooks } from "./ice.ts";
import { proofDeeds, proofHooks } from "./proofs.ts";
import { waterDeeds, waterHooks } from "./water.ts";

/** What is true at each turn, by its id. A turn that is not here is answered 'not sure' and named in the report. */
export const hooks: Hooks = { ...waterHooks, ...iceHooks, ...coldHooks, ...proofHooks };

/** What an answer changes in the kitchen, by `turn:answer`. */
export const deeds: Deeds = { ...waterDeeds, ...iceDeeds, ...coldDeeds, ...proofDeeds };

export { measure } from "./readings.ts";
