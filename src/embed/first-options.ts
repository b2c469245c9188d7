/** Reads one attribute of the tag; null where it is not set. */
export type ReadAttribute = (name: string) => string | null;

/** The attributes of the tag, in the order the guide lists them. */
export const attributeNames = [
  "language",
  "theme",
  "catalogue",
  "lookup",
  "flows",
  "model",
  "shop-name",
  "help-link",
  "link-hosts",
  "session-name",
] as const;

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

/** Where in the browser's own storage a session lies. */
export const storageKey = (sessionName: string) => `fridgeside:${sessionName}`;

/** Where the parts lie that the page's basket was asked for in this session. */
export const basketKey = (sessionName: string) => `${storageKey(sessionName)}:basket`;

/** Whether somebody comes back to this session. Some browsers throw on the mere mention of their storage. */
export function isKept(sessionName: string): boolean {
  try {
    return localStorage.getItem(storageKey(sessionName)) !== null;
  } catch {
    return false;
  }
}

/** Forgets a session before the engine is there to do it: its log, all that lies beside it, and what was bought. */
export function forgetSession(sessionName: string): void {
  try {
    for (const beside of ["", ":whole", ":aside", ":basket"])
      localStorage.removeItem(storageKey(sessionName) + beside);
  } catch {
    // Denied: nothing was kept there either.
  }
}

/** The name that keeps two panels on one site apart; one that cannot be used counts as none. */
export function chooseSessionName(read: ReadAttribute): string {
  const name = read("session-name") ?? "";
  return /^[\w-]{1,40}$/.test(name) ? name : "panel";
}
