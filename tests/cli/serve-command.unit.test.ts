import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { serveCommand } from "../../src/cli/serve-command.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "served ü-"));
  mkdirSync(join(folder, "public/parts"), { recursive: true });
  writeFileSync(join(folder, "public/index.html"), "the page");
  writeFileSync(join(folder, "public/parts/engine-0123abcd.js"), "the part");
  writeFileSync(join(folder, "secret.txt"), "outside");
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Serves until `look` is done. @returns the exit code */
async function serve(look: (address: string) => Promise<void>): Promise<number> {
  let stop = () => {};
  const stopped = new Promise<void>((resolve) => {
    stop = resolve;
  });
  let print = (_line: string) => {};
  const told = new Promise<string>((resolve) => {
    print = resolve;
  });
  const ended = serveCommand([join(folder, "public"), "--port", "0"], { print, untilStopped: () => stopped });
  await look(/http:\S+/.exec(await told)?.[0] ?? "");
  stop();
  return ended;
}

describe("a folder that is served to try a page", () => {
  test("is there at the address that is printed, until it is stopped", async () => {
    let at = "";
    const code = await serve(async (address) => {
      at = address;
      expect(await (await fetch(address)).text()).toBe("the page");
      expect((await fetch(`${address}missing.txt`)).status).toBe(404);
    });
    expect(code).toBe(0);
    await expect(fetch(at)).rejects.toThrow();
  });

  test("has pages asked for again, and parts kept for ever", async () => {
    await serve(async (address) => {
      const cacheOf = async (path: string) => (await fetch(address + path)).headers.get("cache-control");
      expect(await cacheOf("index.html")).toBe("no-cache");
      expect(await cacheOf("parts/engine-0123abcd.js")).toBe("public, max-age=31536000, immutable");
    });
  });

  test("gives nothing that lies outside", async () => {
    await serve(async (address) => {
      for (const path of ["%2e%2e/secret.txt", "parts/..%2f..%2f..%2fsecret.txt"])
        expect((await fetch(address + path)).status).toBe(404);
    });
  });

  test("is refused with a reason where there is none, or the port is none or taken", async () => {
    const said = vi.spyOn(console, "error").mockImplementation(() => {});
    const taken = createServer();
    await new Promise<void>((listening) => taken.listen(0, "127.0.0.1", listening));
    const { port } = taken.address() as AddressInfo;
    expect(await serveCommand([join(folder, "nowhere")])).toBe(2);
    expect(await serveCommand([folder, "--port", "http"])).toBe(2);
    expect(await serveCommand([folder, "--port", String(port)])).toBe(1);
    taken.close();
    expect(said.mock.calls.map(([line]) => line)).toEqual([
      expect.stringMatching(/^There is no folder/),
      "A port is a number below 65536",
      expect.stringMatching(/^It can't be served\. /),
    ]);
    said.mockRestore();
  });
});
