import { wordsOf } from "./words.ts";

/** Words that speak of a danger when they stand together; see locales/<tag>/phrases/danger-rules.yaml. */
type DangerRule = { danger: string; parts: Pattern[][]; unless: Pattern[] };

/** The rules of a language. */
export type DangerRules = {
  rules: DangerRule[];
  /** Words in a row that mean something else: they are passed over. */
  senses: Pattern[];
  /** Words in a row that say nothing: passed over, too. */
  idioms: Pattern[];
  /** What says of a statement that it is not about this fridge now. */
  elsewhen: Pattern[];
  /** What says that it is, after all. */
  now: Pattern[];
  /** Words that a 'no' before them belongs to: it reaches no further. */
  own: Pattern[];
  /** Words that a 'no' reaches across. */
  across: Pattern[];
};

/** Words in a row; of each the beginning is enough, unless it is to be the whole word. */
type Pattern = { begins: string; whole: boolean }[];

/** How words are told to be a 'no' or to join two statements. */
type Told = { isNegator(word: string): boolean; isJoint(word: string): boolean };

/** As far as words of one match may lie apart, and as far as a negator reaches, in words. */
const WINDOW = 10;
const REACH = 3;

/** The rules made ready. */
export function readRules({
  groups = "",
  senses = "",
  idioms = "",
  elsewhen = "",
  now = "",
  own = "",
  across = "",
  ...dangers
}: Record<string, string>): DangerRules {
  const named = new Map<string, string>();
  for (const line of groups.split("\n")) {
    const [name = "", words = ""] = line.split(": ");
    named.set(name, spelt(words));
  }
  // A group may name those before it.
  function spelt(words: string): string {
    return words.replace(/@([\w-]+)/g, (_, name: string) => named.get(name) ?? "");
  }
  const listed = (lines: string) =>
    lines ? lines.split("\n").flatMap((line) => patternsOf(spelt(line))) : [];
  const rules = Object.entries(dangers).flatMap(([danger, lines]) =>
    lines.split("\n").map((line) => {
      const [together = "", unless = ""] = spelt(line).split(" unless ");
      return { danger, parts: together.split(" + ").map(patternsOf), unless: listed(unless) };
    }),
  );
  return {
    rules,
    senses: listed(senses),
    idioms: listed(idioms),
    elsewhen: listed(elsewhen),
    now: listed(now),
    own: listed(own),
    across: listed(across),
  };
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
  said: readonly string[],
  rules: DangerRules,
  told: Told,
): { danger: string; denied: boolean } | null {
  const meant = without(said, rules.senses);
  const words = without(meant, rules.idioms);
  // What has a danger's words in another sense is likely to be none.
  let denied = meant === said ? null : { danger: "general", denied: true };
  for (const { danger, parts, unless } of rules.rules) {
    const found = parts.map((patterns) => patterns.flatMap((pattern) => placesOf(words, pattern)));
    for (const match of matchesOf(found)) {
      const isDenied =
        has(words, unless) ||
        isOfAnotherTime(words, match, rules, told) ||
        match.some((at) => isNegated(words, at, rules, told));
      if (!isDenied) return { danger, denied: false };
      denied ??= { danger, denied: true };
    }
  }
  return denied;
}

/** The names of the rules that fit some words, each once. */
export function namesRuled(words: readonly string[], { rules }: DangerRules): string[] {
  const fitting = rules.filter(
    ({ parts, unless }) =>
      matchesOf(parts.map((patterns) => patterns.flatMap((pattern) => placesOf(words, pattern)))).length >
        0 && !has(words, unless),
  );
  return [...new Set(fitting.map(({ danger }) => danger))];
}

const has = (words: readonly string[], patterns: readonly Pattern[]) =>
  patterns.some((pattern) => placesOf(words, pattern).length > 0);

/** The words, some left blank; the same list where none is. */
function without(words: readonly string[], left: readonly Pattern[]): readonly string[] {
  const blank = new Set(
    left.flatMap((pattern) =>
      placesOf(words, pattern).flatMap((start) => pattern.map((_, next) => start + next)),
    ),
  );
  return blank.size > 0 ? words.map((word, at) => (blank.has(at) ? "" : word)) : words;
}

/** Whether the statement around a match, as far as the joints, is about the past, a fear, or another fridge. */
function isOfAnotherTime(
  words: readonly string[],
  match: readonly number[],
  { elsewhen, now }: DangerRules,
  { isJoint }: Told,
): boolean {
  let [from, to] = [Math.min(...match), Math.max(...match)];
  while (from > 0 && !isJoint(words[from - 1] as string)) from--;
  while (to < words.length - 1 && !isJoint(words[to + 1] as string)) to++;
  const around = words.slice(from, to + 1);
  return has(around, elsewhen) && !has(around, now);
}

/** Whether a negator stands before a word, not too far off, within what is joined to it, and not of a word of its own. */
function isNegated(
  words: readonly string[],
  at: number,
  { own, across }: DangerRules,
  { isNegator, isJoint }: Told,
): boolean {
  let far = 0;
  for (let before = at - 1; before >= 0 && far < REACH; before--) {
    const word = words[before] as string;
    if (isJoint(word)) return false;
    if (isNegator(word)) return true;
    if (has([word], own) && words[before + 1] !== "or") return false;
    if (word === "or" || word === "nor") far = 0;
    else if (!has([word], across)) far++;
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

/** Every choice of one place of each part, no two alike and all near each other. */
function matchesOf(parts: readonly number[][], chosen: number[] = []): number[][] {
  const [part, ...rest] = parts;
  if (!part) return [chosen];
  return part.flatMap((at) => {
    const all = [...chosen, at];
    if (chosen.includes(at) || Math.max(...all) - Math.min(...all) > WINDOW) return [];
    return matchesOf(rest, all);
  });
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
