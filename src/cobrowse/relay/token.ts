import { createHmac, timingSafeEqual } from "node:crypto";
import { type Claims, readClaims } from "../protocol/room/index.ts";

/**
 * Reads a token of RFC 7515's compact form, signed with HMAC SHA-256 (RFC 7518, 3.2).
 * @param key at least as long as the digest, 32 bytes
 * @returns what was signed, as text; null where it was not signed with this key and algorithm
 */
export function readSigned(token: string, key: Uint8Array): string | null {
  const parts = token.split(".");
  const [header = "", payload = "", signature = ""] = parts;
  if (parts.length !== 3 || !parts.every((part) => /^[\w-]+$/.test(part))) return null;
  const given = Buffer.from(signature, "base64url");
  const own = createHmac("sha256", key).update(`${header}.${payload}`).digest();
  if (given.length !== own.length || !timingSafeEqual(given, own)) return null;
  // Whoever has the key may have signed for another algorithm, or asked for more than we know (`crit`).
  return isOurs(decoded(header)) ? decoded(payload) : null;
}

/**
 * Who an agent is by the retailer's word.
 * @param shop the shop that this relay serves; the token names it
 * @param now milliseconds since 1970
 */
export function readToken(token: string, key: Uint8Array, shop: string, now: number): Claims | null {
  const claims = readClaims(readSigned(token, key) ?? "");
  if (claims?.shop !== shop) return null;
  const seconds = now / 1000;
  return seconds < claims.exp && seconds >= (claims.nbf ?? 0) ? claims : null;
}

function decoded(part: string): string {
  return Buffer.from(part, "base64url").toString();
}

function isOurs(header: string): boolean {
  try {
    const { alg, crit } = JSON.parse(header);
    return alg === "HS256" && crit === undefined;
  } catch {
    return false;
  }
}
