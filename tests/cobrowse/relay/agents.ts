import { createHmac } from "node:crypto";

/** The shop and the key of the relays in these tests. */
export const shop = "demo-shop";
export const key = new TextEncoder().encode("a key of a shop that is only for tests");

const part = (value: object) => Buffer.from(JSON.stringify(value)).toString("base64url");

/** A token as a retailer's server makes it, by RFC 7515; it ends in an hour. */
export function tokenFor(
  claims: object = {},
  { with: own = key, header = { alg: "HS256", typ: "JWT" } }: { with?: Uint8Array; header?: object } = {},
): string {
  const exp = Math.floor(Date.now() / 1000) + 3600;
  const signed = `${part(header)}.${part({ exp, shop, sub: "ash-1", name: "Ash", ...claims })}`;
  return `${signed}.${createHmac("sha256", own).update(signed).digest("base64url")}`;
}
