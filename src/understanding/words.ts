/** Longest sentence that is read, in characters; the rest of a longer one is passed over. */
export const longestSentence = 500;

/**
 * The words of a sentence as they are compared: lower case, without accents and apostrophes, numbers as `#`, whatever
 * else is no letter being a gap; `'s` is read as `is`. Words that mean the same here become one.
 * @param same by word, the word that it is read as; several are parted by a blank
 * @example wordsOf("It WON’T make ice!", { wont: "not" }) // ["it", "not", "make", "ice"]
 */
export function wordsOf(sentence: string, same: Record<string, string> = {}): string[] {
  const text = sentence
    .slice(0, longestSentence)
    .toLowerCase()
    .normalize("NFKD")
    .replace(/['’‘`´ʼ]s\b/gu, " is")
    .replace(/[\p{M}'’‘`´ʼ]/gu, "");
  const words = text.match(/\p{L}+|\p{N}+/gu) ?? [];
  return words.flatMap((word) => {
    if (/^\p{N}/u.test(word)) return "#";
    // Nobody stretches a word to three equal letters but to stress it.
    const plain = word.replace(/(.)\1{2,}/gu, "$1$1");
    return Object.hasOwn(same, plain) ? (same[plain] ?? "").split(" ").filter(Boolean) : plain;
  });
}
