import { shopFeedBounds } from "./bounds.ts";
import { tellKind } from "./kinds.ts";
import { byName, leftOut } from "./mapping.ts";
import { kindKey } from "./read-part.ts";

/** A shop's word for a kind, in how many rows it stands, and what it seems to be; undefined where nothing tells. */
export type KindGuess = { word: string; count: number; kind?: string };

/**
 * Suggests for each word of a kind column what it means: the kind that the word itself names, or `by-name` where the
 * names of its parts tell more. What nothing tells is left out, and listed.
 */
export function guessKinds(
  rows: readonly { word: string; name: string }[],
  kinds: readonly string[],
): KindGuess[] {
  const names = new Map<string, string[]>();
  for (const { word, name } of rows) {
    const key = kindKey(word);
    const same = names.get(key);
    if (same) same.push(name);
    else if (names.size < shopFeedBounds.kinds) names.set(key, [name]);
  }
  return [...names]
    .filter(([word]) => word !== "" && !kinds.includes(word))
    .map(([word, own]): KindGuess => {
      const kind = guess(word, own, kinds);
      return { word, count: own.length, ...(kind ? { kind } : {}) };
    })
    .sort((a, b) => b.count - a.count);
}

function guess(word: string, names: readonly string[], kinds: readonly string[]): string | undefined {
  const told = names.map((name) => tellKind(name)).filter((kind) => kind !== null);
  // Of a path the last step says most: 'Fridge parts > Water filters'.
  const own = tellKind(word.split(/[>/|]/).at(-1) ?? "");
  // Where most names tell a kind, the one that does not is another thing: a filter's housing among filters.
  const tellsBetter =
    told.length * 2 >= names.length && (told.length < names.length || told.some((kind) => kind !== own));
  if (own && kinds.includes(own) && !tellsBetter) return own;
  return told.some((kind) => kinds.includes(kind)) ? byName : undefined;
}

/** The guesses as a mapping has them. */
export function kindsOf(guesses: readonly KindGuess[]): Record<string, string> {
  return Object.fromEntries(guesses.map(({ word, kind = leftOut }) => [word, kind]));
}
