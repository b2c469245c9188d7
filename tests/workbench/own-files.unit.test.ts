import { spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import {
  type FileTools,
  realFiles,
  type WriteOptions,
  writeOwnFiles,
} from "../../src/workbench/own-files/index.ts";

let folder = "";
let out = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "own-"));
  out = join(folder, "a", "out");
});
afterEach(() => rmSync(folder, { recursive: true }));

const day = (number: number) => new Date(Date.UTC(2026, 0, number));
const isNamedByContent = (path: string) => path.startsWith("parts/");

/** A build whose first file asks for one part of its own and one of all builds. */
function write(name: string, options: Partial<WriteOptions> = {}): void {
  const content = [
    { path: "first.js", content: `asks for ${name}` },
    { path: `parts/${name}.js`, content: `part ${name}` },
    { path: "parts/all.js", content: "part of all" },
  ];
  writeOwnFiles(out, content, { writer: "build", isNamedByContent, now: day(1), ...options });
}
const parts = () => readdirSync(join(out, "parts")).sort();
const first = () => readFileSync(join(out, "first.js"), "utf8");

describe("parts of earlier builds", () => {
  test("stay for the last builds, and older ones are removed", () => {
    for (const name of ["a", "b", "c", "d"]) write(name, { keep: 3 });
    expect(parts()).toEqual(["all.js", "b.js", "c.js", "d.js"]);
    expect(first()).toBe("asks for d");
  });

  test("stay for so many days after another build took their place, however many there were", () => {
    write("a", { now: day(1), keepDays: 30 });
    write("b", { now: day(40), keepDays: 30 });
    write("c", { now: day(41), keepDays: 30 });
    // Until day 40 pages were served that ask for a.
    expect(parts()).toEqual(["a.js", "all.js", "b.js", "c.js"]);
    write("d", { now: day(70), keepDays: 30 });
    expect(parts()).toEqual(["all.js", "b.js", "c.js", "d.js"]);
  });

  test("are not pushed out by building the same again", () => {
    write("a", { keep: 2 });
    for (let time = 0; time < 5; time++) write("b", { keep: 2, now: day(2 + time) });
    expect(parts()).toEqual(["a.js", "all.js", "b.js"]);
  });

  test("go with the folders that nothing is left in", () => {
    writeOwnFiles(out, [{ path: "old/deep/x.json", content: "{}" }], { writer: "pack", now: day(1) });
    writeOwnFiles(out, [{ path: "y.json", content: "{}" }], { writer: "pack", now: day(2) });
    expect(readdirSync(out).sort()).toEqual([".fridgeside.json", "y.json"]);
  });

  test("of one command are nothing to another in the same folder", () => {
    write("a");
    writeOwnFiles(out, [{ path: "en-GB.json", content: "{}" }], { writer: "pack", now: day(1) });
    write("b");
    expect(readdirSync(out).sort()).toEqual([".fridgeside.json", "en-GB.json", "first.js", "parts"]);
    const taking = () =>
      writeOwnFiles(out, [{ path: "first.js", content: "" }], { writer: "pack", now: day(2) });
    expect(taking).toThrow("does not list it as written by this command");
  });
});

describe("a name that stands for a content", () => {
  test("never gets another one: the build stops and changes nothing", () => {
    write("a");
    const other = [
      { path: "first.js", content: "asks for a new one" },
      { path: "parts/a.js", content: "another part" },
    ];
    const rewriting = () => writeOwnFiles(out, other, { writer: "build", isNamedByContent, now: day(2) });
    expect(rewriting).toThrow(/parts\/a\.js has another content than this build gives that name/);
    expect(first()).toBe("asks for a");
    expect(readFileSync(join(out, "parts/a.js"), "utf8")).toBe("part a");
  });

  test("is there before the first file asks for it", () => {
    const moved: string[] = [];
    const renameSync: FileTools["renameSync"] = (from, to) => {
      moved.push(String(to).slice(out.length + 1));
      realFiles.renameSync(from, to);
    };
    write("a", { files: { ...realFiles, renameSync } });
    expect(moved.filter((path) => !path.startsWith("."))).toEqual(["parts/a.js", "parts/all.js", "first.js"]);
  });
});

describe("a build that fails", () => {
  const failing = (name: "writeFileSync" | "renameSync" | "mkdirSync", at: number): FileTools => {
    let calls = 0;
    return {
      ...realFiles,
      [name]: (...args: unknown[]) => {
        if (++calls === at) throw Object.assign(new Error("full"), { code: "ENOSPC", syscall: name });
        return (realFiles[name] as (...all: unknown[]) => unknown)(...args);
      },
    } as FileTools;
  };
  const everywhere = (["writeFileSync", "renameSync", "mkdirSync"] as const).flatMap((name) =>
    [1, 2, 3, 4].map((at) => [name, at] as const),
  );

  test.each(everywhere)("at %s number %i leaves what was served, and the next one works", (name, at) => {
    write("a");
    const before = readdirSync(out, { recursive: true });
    try {
      write("b", { files: failing(name, at) });
    } catch {
      // Where only the last entry in the marker failed, the new build is served whole.
      if (first() === "asks for b") expect(parts()).toEqual(["all.js", "b.js"]);
      else expect(readdirSync(out, { recursive: true })).toEqual(before);
    }
    expect(["asks for a", "asks for b"]).toContain(first());
    write("c", { keep: 2 });
    expect(parts()).toContain("c.js");
  });

  test.each(everywhere)("at %s number %i leaves no folder that was not there before", (name, at) => {
    let hasFailed = false;
    try {
      write("a", { files: failing(name, at) });
    } catch {
      hasFailed = true;
    }
    // The last steps come after the first file: then all of it is there.
    expect(existsSync(join(folder, "a"))).toBe(!hasFailed);
  });

  test("because it was killed leaves files that the next one takes for ours", () => {
    write("a");
    const marker = join(out, ".fridgeside.json");
    const listed = JSON.parse(readFileSync(marker, "utf8"));
    listed.build.begun = ["parts/b.js", "parts/lost.js", ".fridgeside-half"];
    writeFileSync(marker, JSON.stringify(listed));
    mkdirSync(join(out, ".fridgeside-half"));
    for (const path of ["parts/lost.js", ".fridgeside-half/0"]) writeFileSync(join(out, path), "half");
    writeFileSync(join(out, "parts/b.js"), "part b");
    write("b", { keep: 2 });
    expect(parts()).toEqual(["a.js", "all.js", "b.js"]);
    expect(readdirSync(out)).not.toContain(".fridgeside-half");
  });
});

describe("a marker", () => {
  test.each([
    ["leads out of its folder", { build: { builds: [{ at: day(1).toISOString(), files: ["../../keep"] }] } }],
    ["is of another format", { format: 2 }],
    ["lists what is no list", { build: { builds: "all" } }],
  ])("that %s is not followed", (_, change) => {
    writeFileSync(join(folder, "keep"), "mine");
    write("a");
    const marker = join(out, ".fridgeside.json");
    writeFileSync(marker, JSON.stringify({ about: "", format: 1, ...change }));
    expect(() => write("b")).toThrow(`${marker} does not say what in ${out} may be replaced`);
    expect(readFileSync(join(folder, "keep"), "utf8")).toBe("mine");
    expect(parts()).toEqual(["a.js", "all.js"]);
  });
});

describe("two commands at once", () => {
  const lock = () => join(out, ".fridgeside.lock");
  const lockBy = (process: number, machine = hostname()) => {
    write("a");
    writeFileSync(lock(), JSON.stringify({ process, machine }));
  };

  test("do not write to one folder: the later one ends, and nothing has changed", () => {
    // The process that runs these tests is alive.
    lockBy(process.ppid);
    expect(() => write("b")).toThrow(`Another command is writing to ${out}`);
    expect(first()).toBe("asks for a");
    rmSync(lock());
    write("b");
    expect(first()).toBe("asks for b");
  });

  test("are not kept apart by what a killed one left, here or long ago on another machine", () => {
    const { pid } = spawnSync(process.execPath, ["--version"]);
    lockBy(pid);
    write("b");
    expect(first()).toBe("asks for b");
    lockBy(1, "another");
    expect(() => write("c")).toThrow("Another command is writing");
    utimesSync(lock(), day(1), day(1));
    write("c");
    expect(first()).toBe("asks for c");
    expect(existsSync(lock())).toBe(false);
  });
});
