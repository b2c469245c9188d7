import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { buildCommand } from "../../src/cli/build-command.ts";
import { catalogueCommand } from "../../src/cli/catalogue/index.ts";
import { drawCommand } from "../../src/cli/draw-command.ts";
import { packCommand, packFiles } from "../../src/cli/pack-command.ts";
import { buildEmbed, ownFlows, ownLocales } from "../../src/workbench/build/index.ts";
import { builtOnce } from "../built-once.ts";
import { writeSmallFlow } from "../workbench/small-flow/index.ts";
import { feedOf } from "./catalogue-fixture.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
let smallFlow = "";
let packed: ReturnType<typeof packFiles> | undefined;
let folder = "";
beforeAll(() => {
  smallFlow = mkdtempSync(join(tmpdir(), "small-flow-"));
  writeSmallFlow(smallFlow);
});
afterAll(() => rmSync(smallFlow, { recursive: true }));
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "out-"));
  writeFileSync(join(folder, "feed.csv"), feedOf(2));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Runs a command in this process, with what was built and packed once, and a small flow to draw. */
async function call(name: string, out: string): Promise<{ status: number; said: string }> {
  const said: string[] = [];
  const print = (line: string) => said.push(line);
  const told = vi.spyOn(console, "error").mockImplementation(print);
  try {
    const status = await commands[name]?.(["--out", out], print as (line: string) => void);
    return { status: status ?? -1, said: said.join("\n") };
  } finally {
    told.mockRestore();
  }
}

type Command = (out: string[], print: (line: string) => void) => Promise<number>;
const commands: Record<string, Command> = {
  build: (out, print) =>
    buildCommand(out, print, (folder, kept) => buildEmbed(folder, kept, new Date(), builtOnce)),
  pack: (out, print) => packCommand(out, print, () => (packed ??= packFiles(ownFlows, ownLocales, () => {}))),
  catalogue: (out, print) => catalogueCommand(["build", join(folder, "feed.csv"), ...out], print),
  draw: (out, print) => drawCommand(["no-ice", "--flows", smallFlow, ...out], print),
};
const names = Object.keys(commands);

describe("a command that cannot write where it is told to", () => {
  test.each(names)("%s ends with 1 and says why, below a place that takes no folders", async (name) => {
    const { status, said } = await call(name, "/proc/fridgeside/out");
    expect(status).toBe(1);
    expect(said).toMatch(/cannot be written\. There is no such file or folder: \/proc/);
    expect(said).not.toContain("    at ");
  });

  test.each(names)("%s ends with 1 and says why, below a file, and leaves nothing", async (name) => {
    writeFileSync(join(folder, "taken"), "mine");
    const before = readdirSync(folder);
    const { status, said } = await call(name, join(folder, "taken", "out"));
    expect(status).toBe(1);
    expect(said).toMatch(/cannot be written\. (Something else lies there|That is no folder): .*\/taken/);
    expect(readdirSync(folder)).toEqual(before);
    expect(readFileSync(join(folder, "taken"), "utf8")).toBe("mine");
  });

  test.each(names.filter((name) => name !== "draw"))(
    "%s ends with 1 where a file has the name",
    async (name) => {
      writeFileSync(join(folder, "taken"), "mine");
      const { status, said } = await call(name, join(folder, "taken"));
      expect(status).toBe(1);
      expect(said).toContain(`cannot be written. Something else lies there: ${join(folder, "taken")}`);
      expect(readFileSync(join(folder, "taken"), "utf8")).toBe("mine");
    },
  );
});

test("the program ends with the command's exit code and its words, and no trace of the code", () => {
  const out = join(folder, "taken");
  writeFileSync(out, "mine");
  const args = [
    "--import",
    "tsx",
    "src/cli/main.ts",
    "catalogue",
    "build",
    join(folder, "feed.csv"),
    "--out",
    out,
  ];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { cwd: root, encoding: "utf8" });
  expect(status).toBe(1);
  expect(stdout + stderr).toContain(`cannot be written. Something else lies there: ${out}`);
  expect(stdout + stderr).not.toContain("    at ");
});

describe("what a command did not write", () => {
  const taken: Record<string, string> = {
    build: "fridgeside.js",
    pack: "en-US.json",
    catalogue: "catalogue.json",
  };

  test.each(Object.entries(taken))("%s does not replace: %s", async (name, file) => {
    const out = join(folder, "site");
    mkdirSync(out);
    writeFileSync(join(out, file), "mine");
    const { status, said } = await call(name, out);
    expect(status).toBe(1);
    expect(said).toContain(`${join(out, file)} is there already`);
    expect(said).toContain("name another folder with --out");
    expect(readdirSync(out)).toEqual([file]);
    expect(readFileSync(join(out, file), "utf8")).toBe("mine");
  });

  test.each(Object.keys(taken))("%s leaves alone, twice, and takes its own folder again", async (name) => {
    const out = join(folder, "site");
    mkdirSync(join(out, "parts"), { recursive: true });
    mkdirSync(join(out, "c-0123456789ab"));
    mkdirSync(join(out, "c-half-7"));
    const mine = ["index.html", "parts/mine.js", "c-0123456789ab/mine.json", "c-half-7/mine.json"];
    for (const path of mine) writeFileSync(join(out, path), "mine");
    for (let time = 0; time < 2; time++) expect((await call(name, out)).status).toBe(0);
    for (const path of mine) expect(readFileSync(join(out, path), "utf8")).toBe("mine");
    expect(readFileSync(join(out, ".fridgeside.json"), "utf8")).toContain(taken[name]);
  });

  test("draw does not replace, but for an older drawing", async () => {
    const file = join(folder, "README.md");
    writeFileSync(file, "# Mine\n");
    const refused = await call("draw", file);
    expect(refused).toMatchObject({ status: 1, said: expect.stringContaining("is no drawing") });
    expect(readFileSync(file, "utf8")).toBe("# Mine\n");
    for (let time = 0; time < 2; time++)
      expect((await call("draw", join(folder, "chart.svg"))).status).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(["README.md", "chart.svg", "feed.csv"]);
  });
});
