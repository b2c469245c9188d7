import { readFileSync } from "node:fs";
import { slimFlow } from "../../compile/index.ts";
import type { Flow } from "../../guide/index.ts";
import type { PackData } from "../../pack/index.ts";
import type { Resource } from "../../turn/index.ts";

const ownDrawings = new URL("../../panel/pictures/drawings.json", import.meta.url);

/** What a panel fetches in one language: the flow, the texts, the drawings. */
export type PanelData = PackData;

/** The data of every language with texts, by tag. */
export function createPanelData(flow: Flow, locales: Record<string, Resource>): Record<string, PanelData> {
  const drawings: PanelData["drawings"] = JSON.parse(readFileSync(ownDrawings, "utf8"));
  return Object.fromEntries(
    languagesOf(locales).map((tag) => {
      const texts = withFallback(locales["en-GB"] ?? {}, locales[tag] ?? {});
      return [
        tag,
        { format: 1, flow: slimFlow(flow), resources: { [tag]: withoutExamples(texts) }, drawings },
      ];
    }),
  );
}

/** The languages with texts; the first is the one that others lean on. */
export function languagesOf(locales: Record<string, Resource>): string[] {
  return ["en-GB", ...Object.keys(locales).filter((tag) => tag !== "en-GB")];
}

/** A language's texts, with those of the other where it has none of its own: a phone fetches one set. */
function withFallback(fallback: Resource, own: Resource): Resource {
  const merged = Object.entries(fallback).map(([key, text]) => {
    const mine = own[key];
    if (typeof text === "string" || typeof mine === "string") return [key, mine ?? text];
    return [key, withFallback(text, mine ?? {})];
  });
  return { ...own, ...Object.fromEntries(merged) };
}

/** Texts without the sentences that only tests read. */
function withoutExamples({ described = {}, ...texts }: Resource): Resource {
  const { examples: _, ...read } = described as Resource;
  return { ...texts, described: read };
}
