import { createServer, type Server } from "node:http";

/** What a watcher may ask. */
export type Watched = {
  /** Whether it takes connections and keeps what it is given. */
  isReady(): boolean;
  /** Counters, in Prometheus' text format. */
  metrics(): string;
};

/** Health, readiness and counters, for a port that only the shop's own machines reach. */
export function createWatch({ isReady, metrics }: Watched): Server {
  return createServer({ maxHeaderSize: 8192 }, ({ url, method }, response) => {
    const say = (status: number, text: string, type = "text/plain; charset=utf-8") =>
      response.writeHead(status, { "content-type": type, "cache-control": "no-store" }).end(text);
    if (method !== "GET" && method !== "HEAD") return say(405, "Only GET\n");
    if (url === "/health") return say(200, "alive\n");
    if (url === "/ready") return isReady() ? say(200, "ready\n") : say(503, "not ready\n");
    if (url === "/metrics") return say(200, metrics(), "text/plain; version=0.0.4; charset=utf-8");
    return say(404, "There are /health, /ready and /metrics\n");
  });
}
