import { holds } from "./guards.ts";
import type { ChartContext } from "./memory.ts";
import type { FlowSlice } from "./slice.ts";

/** What is to be said of a tap that is closed by us. */
export type WaterWord = "open-first" | "open-again" | "keep-closed" | "until-part" | "danger";

/**
 * What is to be said of the tap at an ending, or at a turn that needs the water; null where it was not closed, or has
 * been opened since.
 * @param outcome the ending's, or null at a turn
 */
export function waterWord(flow: FlowSlice, memory: ChartContext, outcome: string | null): WaterWord | null {
  if (memory.water !== "closed-by-us" && memory.water !== "left-closed") return null;
  if (outcome === "stopped") return "danger";
  const found = Object.keys(flow.causes).some(
    (id) => flow.causes[id]?.keeps && (memory.causes[id] === "found" || memory.cause === id),
  );
  // Who says that a leak is over has the water back.
  const searching = outcome !== "fixed" && holds(memory, flow.searches, { type: "", at: "" });
  if (found || searching) return outcome === "part" ? "until-part" : "keep-closed";
  return outcome ? "open-again" : "open-first";
}
