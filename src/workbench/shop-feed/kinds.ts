import { folded } from "./folded.ts";
import { allWords, type ShopWords } from "./words/index.ts";

/** A name's words, each in the singular as far as an s at the end tells; what parts a name is a word, too. */
const wordsOf = (name: string) =>
  (
    folded(name)
      .replaceAll("&", " and ")
      .match(/[\p{L}\p{N}]+(?:[-.][\p{L}\p{N}]+)*|[,(;:/+|]|\s[-–—]\s/gu) ?? []
  ).map((word) => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word.trim()));

const isMark = (word: string) => /^[^\p{L}\p{N}]+$/u.test(word);
/** A code, a size, a colour's letter: nothing that names a part. */
const isNumber = (word: string) => /\d/.test(word) || word.length === 1;

/** Names mix languages: "Water filter für Kühlschränke", "Filterkopf water filter". */
const before = new Set(allWords.flatMap((words) => words.before.map(folded)));
const pieces = new Set(allWords.flatMap((words) => words.pieces.map(folded)));

type Found = { kind: string; start: number; end: number };

/**
 * Which kind of part a name means, by what the trade calls them: the last such name before 'for', a comma or a bracket.
 * Null where it names none, or one of which it may be a piece only ("Ice maker control board" is no ice maker), and
 * where `tellKinds` tells several.
 */
export function tellKind(name: string): string | null {
  const [kind, ...others] = tellKinds(name);
  return others.length > 0 ? null : (kind ?? null);
}

/** All kinds that a name may mean, in one language or in several; in order of their names. */
export function tellKinds(name: string, languages: readonly ShopWords[] = allWords): string[] {
  const whole = wordsOf(name);
  const bare = name.replace(/^\s*(set|pack|pair|box) of (\d+ )?/i, "");
  const all = bare === name ? whole : wordsOf(bare);
  const kinds = languages.flatMap((words) => unsureIn(whole, words) ?? tellIn(all, words) ?? []);
  return [...new Set(kinds)].sort();
}

function unsureIn(name: readonly string[], words: ShopWords): readonly string[] | undefined {
  return readyOf(words).unsure.find(([word]) => name.includes(word))?.[1];
}

function tellIn(all: readonly string[], words: ShopWords): string | null {
  const anywhere = findIn(all, words);
  // Most languages have none of a name's words.
  if (anywhere.length === 0) return null;
  for (const segment of segmentsOf(all, anywhere)) {
    const found = findIn(segment, words);
    if (found.length > 0) return judge(segment, found, words);
    // A number or a brand may stand in front, and nothing else.
    if (segment.length > 2 || !segment.some(isNumber)) return null;
  }
  return null;
}

function segmentsOf(all: readonly string[], found: readonly Found[]): string[][] {
  const segments: string[][] = [[]];
  for (const [at, word] of all.entries()) {
    // In "joint de porte" the 'de' belongs to the name.
    if (before.has(word) && !found.some(({ start, end }) => at > start && at < end)) break;
    if (isMark(word)) segments.push([]);
    else segments.at(-1)?.push(word);
  }
  return segments.filter(({ length }) => length > 0);
}

/** A language's words as names are compared; made once, as a feed may have a million names. */
type Ready = {
  /** What the kinds are called, by the first word. */
  phrases: ReadonlyMap<string, { kind: string; words: readonly string[] }[]>;
  after: ReadonlySet<string>;
  unsure: readonly [word: string, kinds: readonly string[]][];
};
const ready = new WeakMap<ShopWords, Ready>();

function readyOf(words: ShopWords): Ready {
  const known = ready.get(words);
  if (known) return known;
  const phrases = new Map<string, { kind: string; words: readonly string[] }[]>();
  for (const [kind, names] of Object.entries(words.kinds))
    for (const name of names) {
      const own = wordsOf(name);
      const [first = ""] = own;
      const same = phrases.get(first);
      if (same) same.push({ kind, words: own });
      else phrases.set(first, [{ kind, words: own }]);
    }
  const unsure = Object.entries(words.unsure ?? {}).map(([word, kinds]): Ready["unsure"][number] => [
    folded(word),
    kinds,
  ]);
  const made = { phrases, after: new Set(words.after.map(folded)), unsure };
  ready.set(words, made);
  return made;
}

function findIn(segment: readonly string[], language: ShopWords): Found[] {
  const found: Found[] = [];
  const { phrases } = readyOf(language);
  for (const [start, first] of segment.entries())
    for (const { kind, words } of phrases.get(first) ?? [])
      if (words.every((word, at) => segment[start + at] === word))
        found.push({ kind, start, end: start + words.length });
  return found;
}

function judge(segment: readonly string[], found: readonly Found[], words: ShopWords): string | null {
  const { after } = readyOf(words);
  const isKnown = (word: string) => isNumber(word) || after.has(word);
  if (words.isNameFirst) return judgeFirst(segment, found, isKnown);
  const [last] = [...found].sort((a, b) => b.end - a.end || a.start - b.start);
  if (!last) return null;
  const others = found.filter(({ kind, end }) => kind !== last.kind && end <= last.start);
  if (others.length > 0 && words.wholes.includes(last.kind)) return null;
  // Two parts in one bag are neither.
  const between = segment.slice(Math.min(...others.map(({ end }) => end)), last.start);
  if (others.length > 0 && between.some((word) => words.joins.includes(word))) return null;
  const isInside = (at: number) => found.some(({ start, end }) => at >= start && at < end);
  if (segment.some((word, at) => pieces.has(word) && !isInside(at))) return null;
  const behind = segment.slice(last.end);
  return behind.every(isKnown) ? last.kind : null;
}

/** Where the name comes first, all else has to be known: "Coperchio filtro acqua" is a lid. */
function judgeFirst(
  segment: readonly string[],
  found: readonly Found[],
  isKnown: (word: string) => boolean,
): string | null {
  const [first] = [...found].sort((a, b) => a.start - b.start || b.end - a.end);
  if (!first) return null;
  const others = segment.filter((_, at) => at < first.start || at >= first.end);
  return others.every((word) => isKnown(word) && !pieces.has(word)) ? first.kind : null;
}
