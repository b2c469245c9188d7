import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { type AddressInfo, createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Redis } from "ioredis";

/** Why tests with Redis are passed over on this machine; nothing where they are not. */
export const noRedis =
  spawnSync("redis-server", ["--version"]).status === 0 ? "" : "redis-server is not installed";
/** What such tests are called. */
export const withRedis = noRedis ? `with Redis (passed over: ${noRedis})` : "with Redis";

/** A Redis of a test's own, on a free port of this machine. */
export type OwnRedis = {
  url: string;
  /** Its process ends at once, as by a power cut of the process alone. */
  kill(): Promise<void>;
  /** The same files on the same port; resolves once it listens, which may be before it has read them. */
  start(...more: string[]): Promise<void>;
  /** Runs a command beside the relays. */
  ask(command: string, ...args: (string | number)[]): Promise<unknown>;
  /** Ends it and removes what it kept. */
  remove(): Promise<void>;
};

/** @param isDurable whether it has everything on the disk before it answers; else it keeps nothing */
export async function startRedis(isDurable = false): Promise<OwnRedis> {
  const folder = mkdtempSync(join(tmpdir(), "redis-"));
  const port = await freePort();
  const keeping = isDurable ? ["--appendonly", "yes", "--appendfsync", "always"] : ["--appendonly", "no"];
  let child: ChildProcess | null = null;
  let own: Redis | null = null;
  const start = async (...more: string[]) => {
    const listens = ["--port", `${port}`, "--bind", "127.0.0.1", "--dir", folder];
    child = spawn("redis-server", [...listens, "--save", "", ...keeping, ...more], {
      stdio: ["ignore", "pipe", "ignore"],
    });
    for await (const chunk of child.stdout ?? [])
      if (/Server initialized|Ready to accept/.test(`${chunk}`)) break;
    child.stdout?.resume();
  };
  const kill = async () => {
    own?.disconnect();
    own = null;
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const ended = once(child, "exit");
    child.kill("SIGKILL");
    await ended;
  };
  await start();
  return {
    url: `redis://127.0.0.1:${port}`,
    start,
    kill,
    ask: (command, ...args) => {
      own ??= new Redis(port, "127.0.0.1", { retryStrategy: () => 50 });
      return own.call(command, ...args);
    },
    remove: async () => {
      await kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A port that nobody had a moment ago. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, "close");
  return port;
}
