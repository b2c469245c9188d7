import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { serveFolders, strictPolicy } from "../../demo/serve/serve-folders.ts";

const kept = ["parts/engine-0123abcd.js", "shards/c-0123456789ab/m/1.json"];
const fresh = ["fridgeside.js", "shards/catalogue.json", "index.html"];
let parent: string;
let server: Server;
let address: string;

beforeAll(async () => {
  parent = mkdtempSync(join(tmpdir(), "site ü-"));
  const write = (path: string, text: string) => {
    mkdirSync(join(parent, path, ".."), { recursive: true });
    writeFileSync(join(parent, path), text);
  };
  for (const path of [...kept, ...fresh]) write(`first/${path}`, path);
  write("second/index.html", "hidden by the first folder's");
  write("second/ä.txt", "only here");
  write("secret.txt", "outside");
  ({ server, address } = await serveFolders([join(parent, "first"), join(parent, "second")], 0));
});

afterAll(() => {
  server.close();
  rmSync(parent, { recursive: true });
});

/** The status line of a path that is sent as it is; fetch would tidy it up first. */
function statusOf(path: string, header = ""): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(Number(new URL(address).port), "127.0.0.1");
    socket.on("error", reject);
    socket.once("data", (data) => {
      resolve(String(data).split(" ")[1] ?? "");
      socket.destroy();
    });
    socket.write(`GET ${path} HTTP/1.1\r\nHost: localhost\r\n${header}\r\n`);
  });
}

describe("the demo's server", () => {
  test("lets a browser keep files that are named by their content, and has it ask again for the rest", async () => {
    const cacheOf = async (path: string) => (await fetch(address + path)).headers.get("cache-control");
    for (const path of kept) expect(await cacheOf(path)).toBe("public, max-age=31536000, immutable");
    for (const path of fresh) expect(await cacheOf(path)).toBe("no-cache");
  });

  test("sends a file again only after it has changed", async () => {
    const etag = (await fetch(`${address}fridgeside.js`)).headers.get("etag") ?? "";
    const again = () => fetch(`${address}fridgeside.js`, { headers: { "if-none-match": etag } });
    expect((await again()).status).toBe(304);
    writeFileSync(join(parent, "first/fridgeside.js"), "fridgeside.JS");
    utimesSync(join(parent, "first/fridgeside.js"), 1, 1);
    expect(await (await again()).text()).toBe("fridgeside.JS");
  });

  test("takes a file from the first folder that has it, and a folder's page for the folder", async () => {
    expect(await (await fetch(address)).text()).toBe("index.html");
    expect(await (await fetch(`${address}ä.txt`)).text()).toBe("only here");
  });

  test("sends the strict policy with every page", async () => {
    expect((await fetch(address)).headers.get("content-security-policy")).toBe(strictPolicy);
  });

  test.each([
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/parts/..%2f..%2fsecret.txt",
    "/parts/../../secret.txt",
    "//../secret.txt",
    "/..\\secret.txt",
    "/%00",
    "/%zz",
    "/missing.txt",
  ])("has nothing at %s", async (path) => {
    expect(await statusOf(path)).toBe("404");
  });

  test("survives a range that ends before it starts", async () => {
    expect(await statusOf("/fridgeside.js", "Range: bytes=5-2\r\n")).toBe("200");
    expect(await statusOf("/")).toBe("200");
  });
});
