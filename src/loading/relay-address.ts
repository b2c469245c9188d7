/** Characters of a relay's address. */
const longestRelay = 500;

/**
 * A relay's address, or null for anything else. What travels there is private, so it has to be encrypted, but on this very
 * machine; and what stands in an address gets into logs, so nothing is added to it. Without a path it is `/rooms`.
 */
export function toRelayAddress(typed: string): string | null {
  try {
    const { protocol, hostname, host, pathname, search, hash, username, password } = new URL(typed);
    const isHere = /^(localhost|127\.0\.0\.1|\[::1\])$/.test(hostname);
    const isSafe = protocol === "wss:" || (protocol === "ws:" && isHere);
    if (!isSafe || search || hash || username || password || typed.length > longestRelay) return null;
    return `${protocol}//${host}${pathname === "/" ? "/rooms" : pathname}`;
  } catch {
    return null;
  }
}
