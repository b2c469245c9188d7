import type { ChartContext } from "../chart/index.ts";
import { type Model, readModel } from "../diagnosis/index.ts";
import type { Diagnosis } from "./subject.ts";

/** What a scenario's tables come to after what the opening was answered with. */
export function modelAfter(
  { tables, openings: { turns, entries, models } }: Diagnosis,
  { findings }: Pick<ChartContext, "findings">,
): Model {
  const key = turns.map((turn) => findings[turn]?.answer ?? "").join(" ");
  return readModel(tables, models[(Object.hasOwn(entries, key) && entries[key]) || 0]);
}
