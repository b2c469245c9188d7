import { bounds } from "../session/index.ts";

/** What one turn's answers are known by, as in locales/<language>/described.yaml, which says how it is read. */
export type Lexicon = {
  /** Lines of `short=written out`. */
  shortForms: string;
  /** By answer: entries of word beginnings and a weight. */
  words: Record<string, string>;
};

/** Less than one telling word: a lone "cubes" or "food" would suggest something for any sentence. */
const LEAST_SCORE = 3;
/** Beside a clear favourite, what shares only a stray word with the sentence would look like a guess. */
const LEAST_SHARE = 1 / 3;
/** As many as stay in sight between the field and a phone's keyboard. */
const MOST_SUGGESTIONS = 3;

/**
 * The answers that a sentence speaks of, best first, three at most and none where nothing fits. Any string will do, of
 * which the first thousand characters are read: capitals, accents and kinds of apostrophe make no difference.
 * @example suggest("It leaks!", { shortForms: "", words: { leaking: "leak 7" } }) // ["leaking"]
 */
export function suggest(sentence: string, { shortForms, words }: Lexicon): string[] {
  let text = fold(sentence.slice(0, bounds.ownWords));
  for (const line of shortForms.split("\n")) {
    const [short, long] = line.split("=");
    if (long) text = text.replaceAll(`${short} `, ` ${long} `);
  }
  const scores = Object.entries(words)
    .map(([answer, entries]) => [answer, scoreOf(text, entries)] as const)
    .sort(([, a], [, b]) => b - a);
  const least = Math.max(LEAST_SCORE, (scores[0]?.[1] ?? 0) * LEAST_SHARE);
  return scores
    .filter(([, score]) => score >= least)
    .slice(0, MOST_SUGGESTIONS)
    .map(([answer]) => answer);
}

/** Lower case, no accents, and a blank for every run of anything but letters; one at either end, too. */
function fold(text: string): string {
  const letters = text.toLowerCase().normalize("NFKD").replace(/\p{M}/gu, "");
  // Ll and Lo: one of the apostrophes that phones type counts as a letter, of the kind Lm.
  return ` ${letters.replace(/[^\p{Ll}\p{Lo}]+/gu, " ")} `;
}

/** By an answer's entries as they are written: making the patterns takes a slow phone longer than a key press may. */
const known = new Map<string, [pattern: RegExp, weight: number][]>();

function scoreOf(text: string, entries: string): number {
  const patterns = known.get(entries) ?? entries.split(/, |\n/).map(patternOf);
  known.set(entries, patterns);
  return patterns.reduce((score, [pattern, weight]) => (pattern.test(text) ? score + weight : score), 0);
}

function patternOf(entry: string): [pattern: RegExp, weight: number] {
  // The rest of a word, then at most two other words. A folded entry holds nothing that a pattern would mistake.
  const pattern = fold(entry).trim().split(" ").join("\\S* +(\\S+ +){0,2}");
  return [new RegExp(` ${pattern}`), Number(entry.slice(entry.lastIndexOf(" ")))];
}
