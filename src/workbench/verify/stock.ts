import { modelLimits } from "../../compile/index.ts";
import { type Flow, regionIn } from "../../guide/index.ts";
import { instrumentNames, needOf } from "../../instruments/index.ts";
import type { Report } from "./report.ts";

/** Kinds of parts that a session may end with and the shop's catalogue has no part of. */
export function findUnstocked(flow: Flow, kinds: string[], report: Report): void {
  for (const kind of Object.keys(flow.parts))
    if (!kinds.includes(kind))
      report({ code: "part-without-catalogue-entry", file: "parts.yaml", path: [kind], at: "key", id: kind });
}

/** Limits that the instruments and the model of the machine cannot do without. */
export function findLackingLimits({ limits, regions }: Flow, report: Report): void {
  const lacking = new Set<string>();
  const of = (id: string) => {
    if (!limits[id]) lacking.add(id);
    return limits[id]?.value ?? 1;
  };
  const region = regionIn(regions, "en");
  for (const id of modelLimits) of(id);
  for (const name of instrumentNames) needOf(name, { of, region, now: "", earlier: [] });
  for (const id of lacking) report({ code: "missing-limit", file: "limits.yaml", path: [], id });
}

/** Words whose numbers no belief can reckon with: a chance must lie between 0 and 1. */
export function findUnfitWords({ words }: Flow, report: Report): void {
  const file = "words.yaml";
  for (const [id, chance] of Object.entries(words.likelihood))
    if (!(chance > 0 && chance < 1))
      report({ code: "wrong-value/likelihood", file, path: ["likelihood", id], id });
}
