import { spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { boundTable } from "../bench/bounds.ts";
import { commandsOf, linksOf } from "./documented-commands.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const pages = [
  "README.md",
  "DEVELOPERS.md",
  ...readdirSync(`${root}demo/docs`).map((name) => `demo/docs/${name}`),
];
const read = (page: string) => readFileSync(root + page, "utf8");
/** Its commands are for a folder without a clone: tests/package runs them there. */
const elsewhere = "demo/docs/ten-minutes.md";
const commands = pages.filter((page) => page !== elsewhere).flatMap((page) => commandsOf(page, read(page)));

/** The long ones: the first two are the README's, which setting up and testing runs; benches take minutes. */
const isLong = (command: string) =>
  /^npm (install|start|test)|^npm run (bench|soak|unit|browser)/.test(command);

describe("the guide", () => {
  test("keeps its first page to 150 lines", () => {
    expect(read("README.md").split("\n").length).toBeLessThanOrEqual(151);
  });

  test.each(pages)("has links that lead somewhere: %s", (page) => {
    const lost = linksOf(read(page)).filter((link) => !existsSync(join(root, dirname(page), link)));
    expect(lost).toEqual([]);
  });

  test("has one list of its pages, with each of them once", () => {
    const listed = linksOf(read("demo/docs/index.md")).filter((link) => !link.startsWith("../"));
    const there = readdirSync(`${root}demo/docs`).filter((name) => name !== "index.md");
    expect(listed.sort()).toEqual(there.sort());
  });

  test("has the table of bounds that its command prints", () => {
    // A formatter lines the columns up.
    const plain = (text: string) => text.replace(/ +/g, " ").replace(/-{3,}/g, "---");
    expect(plain(read("demo/docs/bounds.md"))).toContain(plain(boundTable()));
  });

  test("names only commands that there are", () => {
    const { scripts } = JSON.parse(read("package.json"));
    const named = [
      ...pages
        .map(read)
        .join("\n")
        .matchAll(/npm run (?:--silent )?([\w-]+)/g),
    ].map(([, name]) => name);
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((name) => !Object.hasOwn(scripts, name as string))).toEqual([]);
  });
});

describe("a command of the guide does what it says where it stands:", () => {
  let place = "";
  const run = (command: string, input = "") =>
    spawnSync("bash", ["-c", command], { cwd: place, input, encoding: "utf8" });

  beforeAll(() => {
    place = mkdtempSync(join(tmpdir(), "fridgeside guide "));
    for (const name of ["package.json", "node_modules", "src", "flows", "locales", "demo"])
      symlinkSync(root + name, join(place, name));
    cpSync(`${root}flows`, join(place, "my-flows"), { recursive: true });
    const { stdout } = run("npm run --silent demo-feed -- --models 40");
    writeFileSync(join(place, "feed.csv"), stdout);
  }, 60_000);
  afterAll(() => rmSync(place, { recursive: true }));

  const short = commands.filter(({ command }) => !isLong(command));

  test.each(short)("$command ($page)", ({ command }) => {
    // A shop with headings of its own.
    if (command.includes("--columns")) {
      const [heading = "", ...rows] = readFileSync(join(place, "feed.csv"), "utf8").split("\n");
      const own = heading.replace(/\bnumber\b/, "SKU").replace(/\bmodel\b/, "Model");
      expect(own).not.toBe(heading);
      writeFileSync(join(place, "feed.csv"), [own, ...rows].join("\n"));
    }
    const { status, stderr, stdout } = run(command, '{"danger":"gas"}\n');
    expect(stderr).toBe("");
    expect(status).toBe(0);
    // What it writes into a file is not on screen.
    if (!/--out|>/.test(command)) expect(stdout.length).toBeGreaterThan(0);
  });

  test("there are commands to try", () => {
    expect(short.length).toBeGreaterThan(5);
  });
});
