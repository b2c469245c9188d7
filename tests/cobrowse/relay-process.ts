import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { key, shop } from "./relay/agents.ts";
import { origin } from "./relay/sockets.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** A relay in a process of its own, as the command line starts it. */
export type RelayProcess = {
  port: number;
  child: ChildProcess;
  /** What it counts and measures, by the name without its prefix. */
  measure(): Promise<Record<string, number>>;
  /** Ends it at once. */
  kill(): Promise<void>;
};

/**
 * Starts one, and resolves once it listens.
 * @param store a path, `memory`, or the address of a Redis
 * @param port 0 for any that is free
 * @param page the origin of the pages that may connect
 */
export async function startRelayProcess(store: string, port = 0, page = origin): Promise<RelayProcess> {
  const isShared = store.startsWith("redis://");
  const args = ["src/cli/fridgeside.mjs", "relay", "--shop", shop, "--origin", page, "--proxies", "1"];
  const places = ["--port", `${port}`, "--watch-port", "0", "--store", isShared ? "redis" : store];
  const secrets = { FRIDGESIDE_RELAY_KEY: new TextDecoder().decode(key), FRIDGESIDE_RELAY_REDIS: store };
  const child = spawn(process.execPath, [...args, ...places], {
    cwd: root,
    env: { ...process.env, ...secrets },
    stdio: ["ignore", "pipe", "inherit"],
  });
  for await (const line of createInterface({ input: child.stdout })) {
    const said = JSON.parse(line);
    if (!said.port) continue;
    child.stdout.resume();
    return {
      port: said.port,
      child,
      measure: () => measure(said.watchPort),
      kill: async () => {
        if (child.exitCode !== null || child.signalCode !== null) return;
        const ended = once(child, "exit");
        child.kill("SIGKILL");
        await ended;
      },
    };
  }
  throw new Error("The relay did not start");
}

async function measure(watchPort: number): Promise<Record<string, number>> {
  const text = await (await fetch(`http://127.0.0.1:${watchPort}/metrics`)).text();
  const lines = [...text.matchAll(/^fridgeside_relay_(\w+) ([\d.e+]+)$/gm)];
  return Object.fromEntries(lines.map(([, name, value]) => [name, Number(value)]));
}
