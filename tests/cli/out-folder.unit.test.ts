import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { feedOf } from "./catalogue-fixture.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "out-"));
  writeFileSync(join(folder, "feed.csv"), feedOf(2));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Runs a command as a person does; one that never ends is killed, and has no exit code then. */
function run(...args: string[]): { status: number | null; said: string } {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ["--import", "tsx", "src/cli/main.ts", ...args],
    { cwd: root, encoding: "utf8", timeout: 60_000, killSignal: "SIGKILL" },
  );
  return { status, said: stdout + stderr };
}

const commands: Record<string, () => string[]> = {
  build: () => ["build"],
  pack: () => ["pack"],
  catalogue: () => ["catalogue", "build", join(folder, "feed.csv")],
  draw: () => ["draw", "no-ice-plumbed"],
};
const names = Object.keys(commands);
const call = (name: string, out: string) => run(...(commands[name]?.() ?? []), "--out", out);

describe("a command that cannot write where it is told to", () => {
  test.each(names)("%s ends with 1 and says why, below a place that takes no folders", (name) => {
    const { status, said } = call(name, "/proc/fridgeside/out");
    expect(status).toBe(1);
    expect(said).toMatch(/cannot be written\. There is no such file or folder: \/proc/);
    expect(said).not.toContain("    at ");
  });

  test.each(names)("%s ends with 1 and says why, below a file, and leaves nothing", (name) => {
    writeFileSync(join(folder, "taken"), "mine");
    const before = readdirSync(folder);
    const { status, said } = call(name, join(folder, "taken", "out"));
    expect(status).toBe(1);
    expect(said).toMatch(/cannot be written\. (Something else lies there|That is no folder): .*\/taken/);
    expect(readdirSync(folder)).toEqual(before);
    expect(readFileSync(join(folder, "taken"), "utf8")).toBe("mine");
  });

  test.each(names.filter((name) => name !== "draw"))("%s ends with 1 where a file has the name", (name) => {
    writeFileSync(join(folder, "taken"), "mine");
    const { status, said } = call(name, join(folder, "taken"));
    expect(status).toBe(1);
    expect(said).toContain(`cannot be written. Something else lies there: ${join(folder, "taken")}`);
    expect(readFileSync(join(folder, "taken"), "utf8")).toBe("mine");
  });
});

describe("what a command did not write", () => {
  const taken: Record<string, string> = {
    build: "fridgeside.js",
    pack: "en-US.json",
    catalogue: "catalogue.json",
  };

  test.each(Object.entries(taken))("%s does not replace: %s", (name, file) => {
    const out = join(folder, "site");
    mkdirSync(out);
    writeFileSync(join(out, file), "mine");
    const { status, said } = call(name, out);
    expect(status).toBe(1);
    expect(said).toContain(`${join(out, file)} is there already`);
    expect(said).toContain("name another folder with --out");
    expect(readdirSync(out)).toEqual([file]);
    expect(readFileSync(join(out, file), "utf8")).toBe("mine");
  });

  test.each(Object.keys(taken))("%s leaves alone, twice, and takes its own folder again", (name) => {
    const out = join(folder, "site");
    mkdirSync(join(out, "parts"), { recursive: true });
    mkdirSync(join(out, "c-0123456789ab"));
    mkdirSync(join(out, "c-half-7"));
    const mine = ["index.html", "parts/mine.js", "c-0123456789ab/mine.json", "c-half-7/mine.json"];
    for (const path of mine) writeFileSync(join(out, path), "mine");
    for (let time = 0; time < 2; time++) expect(call(name, out).status).toBe(0);
    for (const path of mine) expect(readFileSync(join(out, path), "utf8")).toBe("mine");
    expect(readFileSync(join(out, ".fridgeside.json"), "utf8")).toContain(taken[name]);
  });

  test("draw does not replace, but for an older drawing", () => {
    const file = join(folder, "README.md");
    writeFileSync(file, "# Mine\n");
    const refused = call("draw", file);
    expect(refused).toMatchObject({ status: 1, said: expect.stringContaining("is no drawing") });
    expect(readFileSync(file, "utf8")).toBe("# Mine\n");
    for (let time = 0; time < 2; time++) expect(call("draw", join(folder, "chart.svg")).status).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(["README.md", "chart.svg", "feed.csv"]);
  });
});
