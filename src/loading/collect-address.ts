/** Characters of an address that outcomes are sent to. */
const longestCollect = 500;

/**
 * Where anonymous outcomes are sent, or null for anything else: on the page's own site, or encrypted. A name, a password
 * or a fragment has no place there.
 */
export function toCollectAddress(typed: string, base: string): string | null {
  try {
    const url = new URL(typed, base);
    const isOwn = url.origin === new URL(base).origin && url.protocol === "http:";
    const isSafe = url.protocol === "https:" || isOwn;
    const isBare = !url.username && !url.password && !url.hash;
    return isSafe && isBare && url.href.length <= longestCollect ? url.href : null;
  } catch {
    return null;
  }
}
