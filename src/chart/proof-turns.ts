import { turnsBehind } from "./guards.ts";
import type { ChartContext } from "./memory.ts";
import type { FlowSlice } from "./slice.ts";

/** The turns whose findings prove a cause, in the order its proof names them; none where it is not proved. */
export function proofTurns({ causes }: FlowSlice, cause: string, memory: ChartContext): string[] {
  const proof = causes[cause]?.proof;
  return proof ? [...new Set(turnsBehind(memory, proof))] : [];
}
