import type { FlowSlice } from "../chart/index.ts";
import type { Texts } from "./actions.ts";
import type { Hazard, Signal } from "./turn.ts";

const severity: Signal[] = ["danger", "warning", "caution", "notice"];

/** Hazards in words, most severe first (the order of ANSI Z535.6). */
export function hazardsOf(flow: FlowSlice, ids: string[], texts: Texts): Hazard[] {
  return ids
    .map((id) => ({ id, signal: flow.hazards[id]?.signal ?? "warning", text: texts(`hazards.${id}`) }))
    .sort((a, b) => severity.indexOf(a.signal) - severity.indexOf(b.signal));
}
