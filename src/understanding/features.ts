/** What a sentence is judged by: numbers of hashed pieces of it, each with its weight; together of length 1. */
export type Features = { ids: number[]; weights: number[] };

/** FNV-1a, 32 bits. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let place = 0; place < text.length; place++)
    value = Math.imul(value ^ text.charCodeAt(place), 0x01000193);
  return (value ^ (value >>> 15)) >>> 0;
}

/** What is known of words: whether the subject has a word (others count by their number), and whether it says little. */
export type Judged = { isKnown(word: string): boolean; isSmall(word: string): boolean };

/** More unknown words than these say no more. */
const MOST_UNKNOWN = 4;

/** How much each kind of piece counts. */
export type Shares = { word: number; pair: number; apart: number; letters: number; unknown: number };
export const usualShares: Shares = { word: 1, pair: 0.7, apart: 0.5, letters: 0.45, unknown: 1 };

/** What words are held against that are to be known: their hash in 16 bits. */
export const wordMark = (word: string) => hash(word) & 0xffff;

/**
 * Single words, neighbouring pairs, pairs with a word between them or with small words alone, and runs of 3 to 5 letters within a word, which
 * survive a misspelling.
 * @param buckets how many numbers there are; a power of two
 */
export function featuresOf(
  words: readonly string[],
  buckets: number,
  { isKnown, isSmall }: Judged = { isKnown: () => true, isSmall: () => false },
  shares: Shares = usualShares,
): Features {
  const found = new Map<number, number>();
  const add = (piece: string, weight: number) => {
    const id = hash(piece) & (buckets - 1);
    found.set(id, Math.max(found.get(id) ?? 0, weight));
  };
  for (const [count] of words
    .filter((word) => word !== "#" && !isKnown(word))
    .slice(0, MOST_UNKNOWN)
    .entries())
    add(`?${count}`, shares.unknown);
  const marked = ["^", ...words, "$"];
  for (const [place, word] of marked.entries()) {
    const [next, after] = [marked[place + 1], marked[place + 2]];
    if (word.length > 1 || word === "#" || /\p{L}/u.test(word)) add(word, shares.word);
    if (next) add(`${word} ${next}`, shares.pair);
    if (next && after) add(`${word} * ${after}`, shares.apart);
    if (!/^[$^#]/.test(word)) addLetters(`<${word}>`, (piece) => add(piece, shares.letters));
  }
  const telling = words.filter((word) => !isSmall(word));
  for (const [place, word] of telling.entries())
    if (place > 0) add(`${telling[place - 1]} ${word}`, shares.pair);
  const weights = [...found.values()];
  const length = Math.hypot(...weights) || 1;
  return { ids: [...found.keys()], weights: weights.map((weight) => weight / length) };
}

function addLetters(word: string, add: (piece: string) => void): void {
  for (let size = 3; size <= 5; size++)
    for (let start = 0; start + size <= word.length; start++) add(`~${word.slice(start, start + size)}`);
}
