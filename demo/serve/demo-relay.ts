import { createHmac, randomBytes } from "node:crypto";
import { createLog, createMemoryStore, createRelay } from "../../src/cobrowse/relay/index.ts";

/** Where the demo's pages look for the relay: they name it in their markup. */
const demoPort = 8787;

const shop = "larder-lane";

/** Where the demo's desk gets its agent's token. A real shop gives one to agents that are signed in, and to nobody else. */
export const tokenPath = "/demo-agent-token";

/**
 * A relay for the demo: on this machine alone, in memory, with a key that is made now and known to nobody.
 * @param origin of the demo's pages; no others may connect
 * @throws Error where the port is taken
 */
export async function startDemoRelay(
  origin: string,
  port = demoPort,
): Promise<{ port: number; token(): string; close(): Promise<void> }> {
  const key = randomBytes(32);
  const relay = await createRelay({
    ...{ key, shop, origins: [origin], proxies: 0, now: Date.now, chance: Math.random },
    store: createMemoryStore(),
    log: createLog({ write: () => {} }),
  });
  const host = "127.0.0.1";
  try {
    const listening = await relay.listen({ host, port, watchHost: host, watchPort: 0 });
    return { port: listening.port, token: () => tokenFor(key, Date.now()), close: () => relay.close() };
  } catch (problem) {
    await relay.close();
    throw problem;
  }
}

/** An agent's token in RFC 7515's compact form, for an hour. @param now milliseconds since 1970 */
export function tokenFor(key: Uint8Array, now: number): string {
  const part = (value: object) => Buffer.from(JSON.stringify(value)).toString("base64url");
  const claims = {
    exp: Math.floor(now / 1000) + 3600,
    shop,
    sub: "demo-agent",
    name: "Rowan",
  };
  const signed = `${part({ alg: "HS256", typ: "JWT" })}.${part(claims)}`;
  return `${signed}.${createHmac("sha256", key).update(signed).digest("base64url")}`;
}
