import type { Finding, FlowSlice } from "../chart/index.ts";
import { wordsOf } from "../instruments/index.ts";
import type { Texts } from "./actions.ts";
import { createNumbers } from "./formats.ts";

/** A reading with its uncertainty and its verdict in words, as it stands in a folded line and in the evidence. */
export function readingText(
  turn: string,
  finding: Finding,
  { limits, region }: FlowSlice,
  texts: Texts,
): string {
  const { reading, answer, at } = finding;
  if (!reading) return "";
  const number = createNumbers(texts("ui.locale"));
  return wordsOf(reading, limits, at, {
    texts,
    region,
    number,
    half: ({ low, high }, decimals = 1) => number((high - low) / 2, decimals),
    verdict: texts(`checks.${turn}.verdicts.${answer}`) || texts(`findings.verdicts.${answer}`),
  });
}
