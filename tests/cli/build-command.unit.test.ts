import { join } from "node:path";
import type { Plugin } from "vite";
import { describe, expect, test, vi } from "vitest";
import { buildCommand } from "../../src/cli/build-command.ts";
import { bundleEmbed, firstFile } from "../../src/workbench/build/build.ts";
import { builtOnce } from "../built-once.ts";

/** Adds a line to the source of one file, as an edit would. */
const edited = (file: string, line: string): Plugin => ({
  name: "edited",
  enforce: "pre",
  transform: (code, id) => (id.split("?")[0]?.endsWith(file) ? { code: code + line, map: null } : null),
});

describe("two builds of different sources", () => {
  test("never give one name to two contents, but for the first files", async () => {
    const changes: Plugin[][] = [
      ["src/embed/first-file.ts", "src/embed/engine.ts"].map((file) =>
        edited(file, '\nglobalThis.edited = "a";'),
      ),
      // Of the same length: no digest may go by that.
      [edited("src/embed/engine.ts", '\nglobalThis.edited = "b";')],
    ];
    const byName = new Map<string, string>();
    const firsts = new Set<string>();
    const engines = new Set<string>();
    const builds = [
      await builtOnce(),
      ...(await Promise.all(changes.map((plugins) => bundleEmbed(plugins)))),
    ];
    for (const build of builds)
      for (const { path, content } of build) {
        const text = content.toString();
        if (path === "fridgeside.en-GB.js") firsts.add(text);
        if (!path.startsWith("parts/")) continue;
        expect(byName.get(path) ?? text, path).toBe(text);
        byName.set(path, text);
        if (path.startsWith("parts/engine-")) engines.add(path);
      }
    // The edits did arrive: each first file names its own engine.
    expect(firsts.size).toBe(3);
    expect(engines.size).toBe(3);
  });
});

describe("the command", () => {
  test.each([
    [["--keep", "0"], "--keep"],
    [["--keep", "many"], "--keep"],
    [["--keep-days", "-1"], "--keep-days"],
    [["--keep-days", "1.5"], "--keep-days"],
  ])("says so where it is called with %j", async (args, said) => {
    const told = vi.spyOn(console, "error").mockImplementation(() => {});
    const [name = "", value = ""] = args;
    expect(await buildCommand([`${name}=${value}`], undefined, async () => {})).toBe(2);
    expect(told).toHaveBeenCalledWith(expect.stringContaining(`${said}: "${value}" is no whole number`));
    told.mockRestore();
  });

  test("passes on where to, and how long the parts of earlier builds stay", async () => {
    const build = vi.fn(async () => {});
    const lines: string[] = [];
    const print = (line: string) => lines.push(line);
    expect(await buildCommand(["--out", "site", "--keep", "9", "--keep-days", "0"], print, build)).toBe(0);
    expect(build).toHaveBeenCalledWith("site", { keep: 9, keepDays: 0 });
    expect(lines).toEqual([`Built ${join("site", firstFile)}`]);
    await buildCommand(["--maps", "apart"], print, build);
    expect(build).toHaveBeenLastCalledWith(expect.any(String), expect.objectContaining({ maps: "apart" }));
  });
});
