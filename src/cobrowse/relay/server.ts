import { createServer, type IncomingMessage, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Duplex } from "node:stream";
import type { Logger } from "pino";
import { type WebSocket, WebSocketServer } from "ws";
import { relayBounds as bounds } from "../protocol/index.ts";
import { addressOf } from "./address.ts";
import type { Connection, Hub } from "./hub.ts";
import type { Line } from "./line.ts";
import type { Metrics } from "./metrics.ts";

/** Milliseconds between two looks at whether a silent line is still there; and for a line to end in good order. */
const [heartbeat, goodbye] = [20_000, 3000];

/** The one address of the relay. Nothing is ever added to it: what is in an address gets into logs. */
const path = "/rooms";

/** What takes connections. */
export type Door = {
  /** @returns the port, which is another one than 0 */
  listen(port: number, host: string): Promise<number>;
  /** Takes no more connections, and resolves once those there are have ended. */
  close(): Promise<void>;
};

/**
 * Web sockets from pages of these origins.
 * @param proxies how many proxies of ours are in front of it
 */
export function createDoor(
  { hub, metrics, log }: { hub: Hub; metrics: Metrics; log: Logger },
  { origins, proxies }: { origins: readonly string[]; proxies: number },
): Door {
  const sockets = new Set<WebSocket>();
  const silent = new Set<WebSocket>();
  const byAddress = new Map<string, number>();
  let isOpen = true;
  const listener = new WebSocketServer({
    noServer: true,
    maxPayload: bounds.message,
    perMessageDeflate: false,
    clientTracking: false,
  });

  const corks = createCorks();

  const take = (socket: WebSocket, raw: Duplex, address: string) => {
    sockets.add(socket);
    byAddress.set(address, (byAddress.get(address) ?? 0) + 1);
    const connection = hub.connect(
      lineOf(
        socket,
        () => corks.hold(raw),
        () => connection.drained(),
      ),
      address,
    );
    receiveFrom(socket, connection);
    socket.on("pong", () => silent.delete(socket));
    // A frame that is too large or no frame at all; the library ends the connection itself.
    socket.on("error", () => metrics.count("connections_refused_total", "frame"));
    socket.on("close", () => {
      sockets.delete(socket);
      silent.delete(socket);
      const left = (byAddress.get(address) ?? 1) - 1;
      if (left > 0) byAddress.set(address, left);
      else byAddress.delete(address);
      connection.closed();
    });
  };
  const statusFor = ({ url, headers }: IncomingMessage, address: string): number | null => {
    if (!isOpen) return 503;
    if (url !== path) return 404;
    if (!origins.includes(headers.origin ?? "")) return 403;
    if (sockets.size >= bounds.connections) return 503;
    return (byAddress.get(address) ?? 0) < bounds.connectionsFromOne ? null : 429;
  };
  const server = createServer({ maxHeaderSize: 8192, requestTimeout: bounds.firstMessage }, (_, response) => {
    response.writeHead(426, { connection: "close", upgrade: "websocket" }).end();
  });
  server.maxConnections = bounds.connections;
  server.on("upgrade", (request: IncomingMessage, socket: Duplex, head: Buffer) => {
    const forwarded = request.headers["x-forwarded-for"];
    const address = addressOf(request.socket.remoteAddress ?? "", String(forwarded ?? ""), proxies);
    const status = statusFor(request, address);
    socket.on("error", () => socket.destroy());
    if (status === null)
      return listener.handleUpgrade(request, socket, head, (opened) => take(opened, socket, address));
    metrics.count("connections_refused_total", `${status}`);
    log.info({ status }, "refused a connection");
    socket.end(`HTTP/1.1 ${status} Refused\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
  });
  const beat = setInterval(() => {
    for (const socket of sockets) {
      if (silent.has(socket)) {
        metrics.count("lines_cut_total", "silent");
        socket.terminate();
        continue;
      }
      silent.add(socket);
      socket.ping();
    }
  }, heartbeat);
  return {
    listen: (port, host) => listenOn(server, port, host),
    close: async () => {
      isOpen = false;
      clearInterval(beat);
      const ended = new Promise<void>((done) => server.close(() => done()));
      const late = setTimeout(() => {
        for (const socket of sockets) socket.terminate();
        server.closeAllConnections();
      }, goodbye);
      await ended;
      clearTimeout(late);
    },
  };
}

/** Starts to listen. @throws Error where the port is taken */
export function listenOn(server: Server, port: number, host: string): Promise<number> {
  return new Promise((done, fail) => {
    server.once("error", fail);
    server.listen(port, host, () => {
      server.off("error", fail);
      done((server.address() as AddressInfo).port);
    });
  });
}

/**
 * What is sent on a connection while one batch of work is done leaves it at once: an entry and its acknowledgement are
 * one packet, and one call of the system, which is most of what a message costs.
 */
function createCorks() {
  const held = new Set<Duplex>();
  const release = () => {
    for (const socket of held) socket.uncork();
    held.clear();
  };
  return {
    hold: (socket: Duplex) => {
      if (held.has(socket)) return;
      if (!held.size) setImmediate(release);
      held.add(socket);
      socket.cork();
    },
  };
}

function lineOf(socket: WebSocket, hold: () => void, drained: () => void): Line {
  return {
    send: (text) => {
      if (socket.readyState !== socket.OPEN) return;
      hold();
      // Nobody waits for room while there is nothing before it.
      if (socket.bufferedAmount > 0) socket.send(text, drained);
      else socket.send(text);
    },
    unread: () => socket.bufferedAmount,
    close: (code, why) => {
      socket.close(code, why);
      // Whoever does not answer the goodbye is not waited for.
      const late = setTimeout(() => socket.terminate(), goodbye);
      late.unref();
      socket.once("close", () => clearTimeout(late));
    },
    cut: () => socket.terminate(),
  };
}

function receiveFrom(socket: WebSocket, connection: Connection): void {
  // Nothing of the protocol is binary, and an empty text is none of its messages.
  socket.on("message", (data, isBinary) => connection.receive(isBinary ? "" : data.toString()));
}
