import { wordsOf } from "./words.ts";

/** Words that speak of a danger when they stand together; see locales/<tag>/phrases/danger-rules.yaml. */
export type DangerRule = { danger: string; parts: Pattern[][]; unless: Pattern[] };

/** Words in a row; of each the beginning is enough, unless it is to be the whole word. */
type Pattern = { begins: string; whole: boolean }[];

/** As far as words of one match may lie apart, and as far as a negator reaches. */
const WINDOW = 7;
const REACH = 3;

/** The rules made ready. */
export function readRules(rules: Record<string, string>): DangerRule[] {
  return Object.entries(rules).flatMap(([danger, lines]) =>
    lines.split("\n").map((line) => {
      const [together = "", unless = ""] = line.split(" unless ");
      return { danger, parts: together.split(" + ").map(patternsOf), unless: unless ? patternsOf(unless) : [] };
    }),
  );
}

const patternsOf = (part: string): Pattern[] =>
  part.split("|").map((words) =>
    words
      .trim()
      .split(" ")
      .map((word) => ({ begins: word.replace("=", ""), whole: word.startsWith("=") })),
  );

/**
 * The danger that the words of one statement speak of by a rule. `denied`: a rule fits, but what is said is that it is
 * not so. Null: no rule fits.
 */
export function ruledDanger(
  words: readonly string[],
  rules: readonly DangerRule[],
  isNegator: (word: string) => boolean,
): { danger: string; denied: boolean } | null {
  let denied: { danger: string; denied: boolean } | null = null;
  for (const { danger, parts, unless } of rules) {
    const found = parts.map((patterns) => patterns.flatMap((pattern) => placesOf(words, pattern)));
    const match = together(found);
    if (!match) continue;
    const isDenied =
      unless.some((pattern) => placesOf(words, pattern).length > 0) ||
      match.some((at) => words.slice(Math.max(0, at - REACH), at).some(isNegator));
    if (!isDenied) return { danger, denied: false };
    denied ??= { danger, denied: true };
  }
  return denied;
}

function placesOf(words: readonly string[], pattern: Pattern): number[] {
  return [...words.keys()].filter((start) =>
    pattern.every(({ begins, whole }, next) => {
      const word = words[start + next];
      return word !== undefined && (whole ? word === begins : word.startsWith(begins));
    }),
  );
}

/** One place of each part, no two alike and all near each other; the first such choice. */
function together(parts: readonly number[][], chosen: number[] = []): number[] | null {
  const [part, ...rest] = parts;
  if (!part) return chosen;
  for (const at of part) {
    const all = [...chosen, at];
    if (chosen.includes(at) || Math.max(...all) - Math.min(...all) > WINDOW) continue;
    const found = together(rest, all);
    if (found) return found;
  }
  return null;
}

/** The statements of a sentence, as lists of words that are not made alike; the whole sentence where there is but one. */
export function statementsOf(sentence: string, joints: Set<string>): string[][] {
  return sentence
    .split(/[.,;:!?\n]+/)
    .flatMap((part) => {
      const statements: string[][] = [[]];
      for (const word of wordsOf(part))
        if (joints.has(word)) statements.push([]);
        else statements.at(-1)?.push(word);
      return statements;
    })
    .filter((words) => words.length > 0);
}
