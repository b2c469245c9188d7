import { plainText } from "../catalogue/index.ts";
import { type Journal, standingOf } from "../session/index.ts";
import type { Texts } from "../turn/index.ts";

/**
 * What somebody said of this session that is no answer to a question, or not yet. What was given as an answer stands
 * there in its own words, and whoever has changed that has taken them back.
 */
export function saidIn(journal: Journal, texts: Texts): string[] {
  const { entries } = journal;
  const since = entries.findLastIndex(({ event }) => event.type === "started-again") + 1;
  const open = standingOf(journal).held.map(({ event }) => "words" in event && event.words);
  return entries
    .slice(since)
    .flatMap(({ event }) => {
      if (event.type !== "told" || (event.facts[0] && !open.includes(event.words))) return [];
      const words = plainText(event.words);
      return words && event.heard ? texts("thread.heard", { words }) : words;
    })
    .filter(Boolean);
}
