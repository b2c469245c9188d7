import { relayBounds } from "../cobrowse/protocol/index.ts";
import { readBoundedText } from "../loading/index.ts";

/** Seconds before the shop counts as out of reach. */
const PATIENCE_SECONDS = 10;

/** Three parts between dots, as RFC 7515 writes them; the relay says whether it is one of the shop's. */
const compactForm = /^[\w-]+\.[\w-]+\.[\w-]+$/;

/**
 * The token of whoever is signed in at the shop, asked for with the page's own cookies.
 * @returns null where there is none, or what came is no token
 */
export async function fetchToken(address: string, get: typeof fetch): Promise<string | null> {
  try {
    const response = await get(address, {
      credentials: "same-origin",
      cache: "no-store",
      signal: AbortSignal.timeout(PATIENCE_SECONDS * 1000),
    });
    const read = response.ok ? await readBoundedText(response, relayBounds.token) : null;
    return tokenIn(read?.text);
  } catch {
    return null;
  }
}

/** What a page or the shop gave, where it may be a token. */
export function tokenIn(given: unknown): string | null {
  const token = typeof given === "string" ? given.trim() : "";
  return token.length <= relayBounds.token && compactForm.test(token) ? token : null;
}
