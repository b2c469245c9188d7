import type { Logger } from "pino";
import { createHub } from "./hub.ts";
import { createMetrics } from "./metrics.ts";
import { createRooms } from "./rooms.ts";
import { createSeals } from "./seals.ts";
import { createDoor, listenOn } from "./server.ts";
import type { Store } from "./store.ts";
import { readToken } from "./token.ts";
import { createWatch } from "./watch.ts";

/** Milliseconds between two looks at what is over, and between two clean-ups of the store. */
const [look, cleanUp] = [2000, 300_000];

/** What a relay is made of. */
export type RelayOptions = {
  store: Store;
  /** What the retailer signs agents' tokens with; 32 bytes at least. */
  key: Uint8Array;
  /** The shop that tokens have to name. */
  shop: string;
  /** The pages that may connect, each as a browser names it: `https://shop.example`. */
  origins: readonly string[];
  /** Proxies of the shop in front of the relay, each of which appends to X-Forwarded-For. */
  proxies: number;
  log: Logger;
  now(): number;
  chance(): number;
  /** Where clients go when this relay stops, if not back to it. */
  next?: string;
};

/** A relay that was made; it starts to listen when it is told to. */
export type Relay = {
  /** Ports of 0 are chosen by the system. @throws Error where a port is taken */
  listen(at: { host: string; port: number; watchHost: string; watchPort: number }): Promise<{
    port: number;
    watchPort: number;
  }>;
  /** Tells everybody where to go, ends their lines and closes the store. */
  close(): Promise<void>;
};

/** Joins the parts of a relay. */
export async function createRelay(options: RelayOptions): Promise<Relay> {
  const { store, key, shop, log, now } = options;
  const metrics = createMetrics();
  const rooms = createRooms(store, now, () => metrics.count("lines_cut_total", "slow"));
  for (const room of await store.rooms()) await rooms.find(room);
  const porch = {
    store,
    rooms,
    seals: createSeals(key),
    readToken: (token: string, at: number) => readToken(token, key, shop, at),
    now,
  };
  const hub = createHub(porch, metrics, log);
  const door = createDoor({ hub, metrics, log }, options);
  let isOpen = false;
  const measured = (): Record<string, [number, string]> => ({
    lines: [hub.counts().lines, "Connections that are there"],
    rooms: [hub.counts().rooms, "Rooms that somebody may come back to"],
    cpu_seconds: [cpuSeconds(), "Processor time of this process"],
    resident_bytes: [process.memoryUsage.rss(), "Memory of this process"],
    ready: [isOpen && store.isWell() ? 1 : 0, "Whether it takes connections"],
  });
  const watch = createWatch({
    isReady: () => isOpen && store.isWell(),
    metrics: () => metrics.text(measured()),
  });
  const timers = [
    setInterval(() => hub.tick().catch(() => log.error("could not end a room")), look),
    setInterval(() => store.tidy(now()).catch(() => log.error("could not tidy the store")), cleanUp),
  ];
  return {
    listen: async ({ host, port, watchHost, watchPort }) => {
      const ports = {
        port: await door.listen(port, host),
        watchPort: await listenOn(watch, watchPort, watchHost),
      };
      isOpen = true;
      log.info(ports, "listening");
      return ports;
    },
    close: async () => {
      isOpen = false;
      for (const timer of timers) clearInterval(timer);
      hub.leave(options.chance, options.next);
      await door.close();
      await store.close();
      watch.closeAllConnections();
      watch.close();
      log.info("stopped");
    },
  };
}

function cpuSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}
