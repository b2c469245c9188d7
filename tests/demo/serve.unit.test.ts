import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { WebSocket } from "ws";
import { startDemoRelay } from "../../demo/serve/demo-relay.ts";
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

  test("sends the strict policy with every page, and leave to talk to a relay with those that have one", async () => {
    const policyOf = async (path: string) =>
      (await fetch(address + path)).headers.get("content-security-policy") ?? "";
    expect(await policyOf("ä.txt")).toBe(strictPolicy);
    const withRelay = strictPolicy.replace("connect-src 'self'", "connect-src 'self' ws://127.0.0.1:*");
    expect(await policyOf("")).toBe(withRelay);
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

describe("the demo's relay", () => {
  test("takes the token that the demo's server gives, from the demo's own pages", async () => {
    const relay = await startDemoRelay("http://127.0.0.1:4173", 0);
    const dial = (origin: string) => new WebSocket(`ws://127.0.0.1:${relay.port}/rooms`, { origin });
    const desk = dial("http://127.0.0.1:4173");
    const heard = new Promise<string>((resolve) => desk.once("message", (data) => resolve(data.toString())));
    desk.once("open", () =>
      desk.send(JSON.stringify({ type: "join", v: 1, code: "00000000", token: relay.token() })),
    );
    // The code is nobody's; a token that isn't taken would be refused before that.
    expect(JSON.parse(await heard)).toMatchObject({ type: "no", why: "no-such-code" });
    const other = dial("http://evil.example");
    const refused = await new Promise<Error>((resolve) => other.once("error", resolve));
    expect(refused.message).toContain("403");
    desk.close();
    await relay.close();
  });

  test("answers at the address of the agent's token, anew each time, and no browser keeps it", async () => {
    let count = 0;
    const { server: own, address: at } = await serveFolders([], 0, new Map([["/token", () => `${count++}`]]));
    const asked = async () => (await fetch(`${at}token`)).text();
    expect([await asked(), await asked()]).toEqual(["0", "1"]);
    expect((await fetch(`${at}token`)).headers.get("cache-control")).toBe("no-store");
    own.close();
    own.closeAllConnections();
  });
});
