import type { ReadAttribute } from "../loading/language/index.ts";

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
