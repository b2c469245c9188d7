import { guardOf } from "../condition/index.ts";
import type { Flow } from "../guide/index.ts";
import { turnsBehind } from "./guards.ts";
import type { ChartContext } from "./memory.ts";

/** The turns whose findings prove a cause, in the order its proof names them; none where it is not proved. */
export function proofTurns(flow: Flow, cause: string, memory: ChartContext): string[] {
  const proof = flow.causes[cause]?.proof;
  return proof ? [...new Set(turnsBehind(memory, guardOf(proof, flow.conditions)))] : [];
}
