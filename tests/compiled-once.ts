import type { Advisers } from "../src/advice/index.ts";
import { type Compiled, compileFlow, guideOf } from "../src/compile/index.ts";
import type { Flow } from "../src/guide/index.ts";
import type { Guide } from "../src/session/index.ts";
import { frozen } from "./frozen.ts";

const compiled = new WeakMap<Flow, Compiled>();

/** A flow compiled, once for all files that a worker runs; frozen, as nobody may spoil it for another. */
export function compiledOnce(flow: Flow): Compiled {
  const made = compiled.get(flow) ?? frozen(compileFlow(flow));
  compiled.set(flow, made);
  return made;
}

/** A guide of its own on a flow that is compiled once. */
export function guideFor(flow: Flow, advisers?: Advisers): Guide {
  return guideOf(compiledOnce(flow), advisers);
}
