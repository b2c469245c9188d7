/** Reads one attribute of the tag; null where it is not set. */
export type ReadAttribute = (name: string) => string | null;

/**
 * The language to speak: the tag's own wish, else the page's, else the first that there is. The first file asks
 * this before anything is checked; what is wrong with a wish, the engine says.
 * @param languages the BCP 47 tags that have texts; the first is the fallback
 */
export function chooseLanguage(read: ReadAttribute, inherited: string, languages: string[]): string {
  return (
    matchLanguage(read("language") ?? "", languages) ??
    matchLanguage(inherited, languages) ??
    (languages[0] as string)
  );
}

/** The language with texts that comes nearest to a wish: the same tag, else the same first part. */
export function matchLanguage(wish: string, languages: string[]): string | null {
  const lower = wish.toLowerCase();
  const first = lower.split("-")[0];
  return (
    languages.find((tag) => tag.toLowerCase() === lower) ??
    languages.find((tag) => tag.toLowerCase().split("-")[0] === first) ??
    null
  );
}
