import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { galleryCommand } from "../../src/cli/gallery-command.ts";

let shop: string;
beforeAll(() => {
  shop = mkdtempSync(join(tmpdir(), "a shop ü-"));
  mkdirSync(join(shop, "theme/fonts"), { recursive: true });
  writeFileSync(
    join(shop, "theme/shop.css"),
    '@import "base.css"; fridgeside-panel { --fridgeside-radius: 4px }',
  );
  writeFileSync(join(shop, "theme/base.css"), "body { color: red }");
  writeFileSync(join(shop, "theme/fonts/shop.woff2"), "a font");
  writeFileSync(join(shop, "theme/prices.json"), "{}");
  writeFileSync(join(shop, "secret.css"), "outside");
  writeFileSync(join(shop, "words.json"), '{ "ui.title": "Ask us" }');
});
afterAll(() => rmSync(shop, { recursive: true }));

/** What is answered at these paths while the command runs; a script is built by `build` alone. */
async function ask(args: string[], paths: string[]) {
  const said: string[] = [];
  const answers = new Map<string, { status: number; type: string; body: string }>();
  const heard = vi.spyOn(console, "error").mockImplementation((line) => void said.push(line));
  const code = await galleryCommand([...args], {
    print: (line) => void said.push(line),
    build: async () => {},
    untilStopped: async () => {
      const port = /127\.0\.0\.1:(\d+)/.exec(said.join())?.[1] ?? "";
      for (const path of paths) answers.set(path, await read(Number(port), path));
    },
  });
  heard.mockRestore();
  return { code, said: said.join("\n"), answers };
}

/** The path goes out as it is; fetch would tidy it up first. */
function read(port: number, path: string) {
  return new Promise<{ status: number; type: string; body: string }>((done, failed) => {
    request({ port, host: "127.0.0.1", path }, (response) => {
      let body = "";
      response.on("data", (chunk) => {
        body += chunk;
      });
      response.on("end", () =>
        done({ status: response.statusCode ?? 0, type: response.headers["content-type"] ?? "", body }),
      );
    })
      .on("error", failed)
      .end();
  });
}

describe("fridgeside gallery", () => {
  test("serves the pages and journals of every turn, and sends whoever asks for nothing there", async () => {
    const { code, said, answers } = await ask(
      ["--port", "0"],
      ["/", "/gallery/", "/gallery/panel.html?place=ice-bin.look", "/gallery/places.json", "/catalogue.json"],
    );
    expect(code).toBe(0);
    expect(said).toMatch(/^Every turn is at http:\/\/127\.0\.0\.1:\d+\/gallery\/ \(Ctrl\+C stops\)$/);
    expect(answers.get("/")?.status).toBe(302);
    expect(answers.get("/gallery/")?.body).toContain("Every turn of the panel");
    expect(answers.get("/gallery/panel.html?place=ice-bin.look")?.type).toMatch(/^text\/html/);
    expect(JSON.parse(answers.get("/gallery/places.json")?.body ?? "").places.length).toBeGreaterThan(200);
    expect(JSON.parse(answers.get("/catalogue.json")?.body ?? "").parts.length).toBeGreaterThan(0);
  });

  test("puts a shop's rules and words in the place of none, with what those rules fetch", async () => {
    const { answers } = await ask(
      ["--port", "0", "--style", join(shop, "theme/shop.css"), "--words", join(shop, "words.json")],
      ["/gallery/own.css", "/gallery/own.json", "/gallery/base.css", "/gallery/fonts/shop.woff2"],
    );
    expect(answers.get("/gallery/own.css")?.body).toContain("--fridgeside-radius: 4px");
    expect(answers.get("/gallery/own.json")?.body).toContain("Ask us");
    expect(answers.get("/gallery/base.css")).toMatchObject({ status: 200, type: "text/css; charset=utf-8" });
    expect(answers.get("/gallery/fonts/shop.woff2")?.body).toBe("a font");
  });

  test("serves nothing else of this machine", async () => {
    const paths = [
      "/gallery/prices.json",
      "/gallery/../secret.css",
      "/gallery/..%2fsecret.css",
      "/gallery/%2e%2e/secret.css",
      "/../package.json",
      "/gallery/../../package.json",
      "/index.html",
      "/gallery/%00",
      "/%",
    ];
    const { answers } = await ask(["--port", "0", "--style", join(shop, "theme/shop.css")], paths);
    for (const path of paths) expect(answers.get(path)?.status, path).toBe(404);
    expect(existsSync(join(shop, "secret.css"))).toBe(true);
  });

  test.each([
    ["a stylesheet that is not there", ["--style", "nowhere.css"], '--style: "nowhere.css" is no file'],
    ["a folder of words", ["--words", tmpdir()], "is no file"],
    ["a port that there is not", ["--port", "70000"], '--port: "70000" is no port'],
  ])("does not start with %s", async (_, args, why) => {
    const { code, said } = await ask(args, []);
    expect(code).toBe(2);
    expect(said).toContain(why);
  });
});
