import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { describe, expect, test, vi } from "vitest";
import { relayCommand } from "../../src/cli/relay-command.ts";
import { key, shop } from "../cobrowse/relay/agents.ts";
import { comeBack, meet, origin, type Running, records } from "../cobrowse/relay/sockets.ts";

const env = { FRIDGESIDE_RELAY_KEY: new TextDecoder().decode(key) };

async function run(args: string[], given: Record<string, string> = env) {
  const printed: string[] = [];
  const said = vi.spyOn(console, "error").mockImplementation((line) => void printed.push(line));
  const untilStopped = () => ({ stopped: Promise.resolve(), fail: () => {} });
  const logged: string[] = [];
  const log = { write: (line: string) => void logged.push(line) };
  const code = await relayCommand(args, {
    env: given,
    print: (line) => void printed.push(line),
    log,
    untilStopped,
  });
  said.mockRestore();
  return { code, printed: printed.join("\n"), logged: logged.join("") };
}
const needed = ["--shop", shop, "--origin", origin];
const anyPorts = ["--port", "0", "--watch-port", "0"];

describe("fridgeside relay", () => {
  test.each<[string, string[], Record<string, string>, RegExp]>([
    ["without a key", needed, {}, /FRIDGESIDE_RELAY_KEY/],
    ["with a key that can be guessed", needed, { FRIDGESIDE_RELAY_KEY: "secret" }, /32 bytes/],
    ["for no shop", ["--origin", origin], env, /--shop/],
    ["for any page", ["--shop", shop], env, /--origin/],
    ["for an origin with a path", ["--shop", shop, "--origin", `${origin}/`], env, /no origin/],
    ["for all origins", ["--shop", shop, "--origin", "*"], env, /no origin/],
    ["on a port that there is not", [...needed, "--port", "70000"], env, /port/],
    ["to hand over in the open", [...needed, "--next", "ws://other.example"], env, /wss/],
  ])("does not start %s", async (_, args, given, why) => {
    const { code, printed, logged } = await run([...args, "--store", "memory"], given);
    expect(code).toBe(2);
    expect(printed).toMatch(why);
    expect(logged).toBe("");
  });

  test("listens, and stops when it is told to", async () => {
    const { code, logged } = await run([...needed, ...anyPorts, "--store", "memory"]);
    expect(code).toBe(0);
    expect(logged).toMatch(/listening[\s\S]*stopped/);
  });
});

describe("the process of a relay", () => {
  const root = fileURLToPath(new URL("../../", import.meta.url));

  /** Starts it, and waits until it says where it listens. */
  async function start(store: string): Promise<{ child: ChildProcess; running: Running }> {
    const args = [
      "src/cli/fridgeside.mjs",
      "relay",
      ...needed,
      ...anyPorts,
      "--proxies",
      "1",
      "--store",
      store,
    ];
    const child = spawn(process.execPath, args, { cwd: root, env: { ...process.env, ...env } });
    for await (const line of createInterface({ input: child.stdout as NodeJS.ReadableStream })) {
      const { port, watchPort } = JSON.parse(line);
      if (port) return { child, running: { port, watchPort } as Running };
    }
    throw new Error("The relay did not start");
  }

  test("may be killed at any time: the next one has all that it acknowledged", async () => {
    const folder = mkdtempSync(join(tmpdir(), "relay "));
    const store = join(folder, "relay.log");
    const first = await start(store);
    const { phone, desk } = await meet(first.running);
    for (let nth = 1; nth <= 12; nth++) phone.put("entry", `${nth}`);
    while ((await phone.hear("kept")).n < 6);
    first.child.kill("SIGKILL");
    await Promise.all([once(first.child, "exit"), phone.closed, desk.closed]);

    const second = await start(store);
    const back = await comeBack(second.running, phone, 0);
    // Whatever was not acknowledged is said again, as is what was.
    for (let nth = 1; nth <= 12; nth++) back.put("entry", `${nth}`, nth);
    const agent = await comeBack(second.running, desk, 0);
    const seen = await records(agent, 15);
    expect(seen.map(({ seq }) => seq)).toEqual(seen.map((_, place) => place + 1));
    expect(seen.slice(3).map(({ body }) => Number(body))).toEqual(
      Array.from({ length: 12 }, (_, place) => place + 1),
    );
    second.child.kill("SIGTERM");
    expect((await agent.hear("moving")).type).toBe("moving");
    expect(await once(second.child, "exit")).toEqual([0, null]);
    rmSync(folder, { recursive: true });
  });
});
