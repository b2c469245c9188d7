import { wordsOf } from "./words.ts";

/** Words that speak of a danger when they stand together; see locales/<tag>/phrases/danger-rules.yaml. */
export type DangerRule = { danger: string; parts: Pattern[][]; unless: Pattern[] };

/** Words in a row; of each the beginning is enough, unless it is to be the whole word. */
type Pattern = { begins: string; whole: boolean }[];

/** As far as words of one match may lie apart, and as far as a negator reaches, in words. */
const WINDOW = 10;
const REACH = 3;

/** The rules made ready. */
export function readRules(rules: Record<string, string>): DangerRule[] {
  return Object.entries(rules).flatMap(([danger, lines]) =>
    lines.split("\n").map((line) => {
      const [together = "", unless = ""] = line.split(" unless ");
      return {
        danger,
        parts: together.split(" + ").map(patternsOf),
        unless: unless ? patternsOf(unless) : [],
      };
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
  isJoint: (word: string) => boolean,
): { danger: string; denied: boolean } | null {
  let denied: { danger: string; denied: boolean } | null = null;
  for (const { danger, parts, unless } of rules) {
    const found = parts.map((patterns) => patterns.flatMap((pattern) => placesOf(words, pattern)));
    const match = together(found);
    if (!match) continue;
    const isDenied =
      unless.some((pattern) => placesOf(words, pattern).length > 0) ||
      match.some((at) => isNegated(words, at, isNegator, isJoint));
    if (!isDenied) return { danger, denied: false };
    denied ??= { danger, denied: true };
  }
  return denied;
}

/** Whether a negator stands before a word, not too far off and within what is joined to it. */
function isNegated(
  words: readonly string[],
  at: number,
  isNegator: (word: string) => boolean,
  isJoint: (word: string) => boolean,
): boolean {
  for (let before = at - 1; before >= Math.max(0, at - REACH); before--) {
    const word = words[before] as string;
    if (isJoint(word)) return false;
    if (isNegator(word)) return true;
  }
  return false;
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

/** The parts of a sentence between signs such as commas, as lists of words that are not made alike. */
export const clausesOf = (sentence: string): string[][] =>
  sentence
    .split(/[.,;:!?\n]+/)
    .map((part) => wordsOf(part))
    .filter((words) => words.length > 0);

/** The statements of a sentence: its parts, cut at the words that join two statements. */
export function statementsOf(sentence: string, joints: Set<string>): string[][] {
  return clausesOf(sentence)
    .flatMap((part) => {
      const statements: string[][] = [[]];
      for (const word of part)
        if (joints.has(word)) statements.push([]);
        else statements.at(-1)?.push(word);
      return statements;
    })
    .filter((words) => words.length > 0);
}
