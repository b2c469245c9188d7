import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type FileTools, realFiles } from "../../src/workbench/own-files/index.ts";
import { build, feedOf, layOutByModel, served } from "./catalogue-fixture.ts";

let folder = "";
let out = "";
let feed = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "catalogue-"));
  out = join(folder, "out");
  feed = join(folder, "feed.csv");
  writeFileSync(feed, feedOf(3));
});
afterEach(() => rmSync(folder, { recursive: true }));

const rebuild = (text: string, ...rest: [change?: Parameters<typeof build>[2], isStrict?: boolean]) => {
  writeFileSync(feed, text);
  return build(feed, out, ...rest);
};
const foldersIn = () => readdirSync(out).filter((name) => name.startsWith("c-"));

describe("a catalogue that is built", () => {
  test("lies in a folder named by its content, and the manifest leads there", () => {
    const { switched } = build(feed, out);
    const now = served(out);
    expect(now?.folder).toMatch(/^c-[0-9a-f]{12}$/);
    expect(switched).toMatchObject({ folder: now?.folder, files: 3 });
    expect(Object.keys(now?.files ?? {})).toEqual(["models/WX0.json", "models/WX1.json", "models/WX2.json"]);
    expect(now?.files["models/WX1.json"]).toContain("LLS-1");
  });

  test("has the same folder for the same content, and leaves nothing half-written", () => {
    const first = build(feed, out).switched?.folder;
    expect(build(feed, out).switched?.folder).toBe(first);
    expect(readdirSync(out).sort()).toEqual([first, ".fridgeside.json", "catalogue.json"].sort());
  });

  test("leaves the folder of the one before for pages that are open, and removes older ones of its own", () => {
    const foreign = ["c-half-7", "c-pictures", "c-0123456789ab"];
    for (const name of foreign) mkdirSync(join(out, name), { recursive: true });
    const folders = [1, 2, 3].map((count) => rebuild(feedOf(count)).switched?.folder);
    expect(foldersIn().sort()).toEqual([folders[1], folders[2], ...foreign].sort());
    expect(served(out)?.folder).toBe(folders[2]);
  });

  test("is switched to only when each file and folder was written and synced", () => {
    const steps: string[] = [];
    const names = new Map<number, string>();
    const files: FileTools = {
      ...realFiles,
      openSync(path, ...rest) {
        const file = realFiles.openSync(path, ...rest);
        names.set(file, String(path).replace(/.*\//, ""));
        return file;
      },
      fsyncSync(file) {
        steps.push(`sync ${names.get(file)}`);
        realFiles.fsyncSync(file);
      },
      renameSync(from, to) {
        if (String(to).endsWith(".fridgeside.json")) return realFiles.renameSync(from, to);
        steps.push(
          `rename to ${String(to)
            .replace(/.*\//, "")
            .replace(/[0-9a-f]{12}/, "…")}`,
        );
        realFiles.renameSync(from, to);
      },
    };
    build(feed, out, { files });
    expect(steps).toEqual([
      ...["sync WX0.json", "sync WX1.json", "sync WX2.json", "sync c-half-1", "sync models"],
      ...["rename to c-…", "sync out", "sync catalogue.json.new", "rename to catalogue.json", "sync out"],
    ]);
  });
});

describe("the catalogue that is served stays as it was", () => {
  const failing = (name: "writeSync" | "fsyncSync" | "renameSync" | "readSync", at: number, code: string) => {
    let calls = 0;
    return {
      ...realFiles,
      [name]: (...args: unknown[]) => {
        const isMarker = String(args[0]).includes(".fridgeside");
        if (!isMarker && ++calls === at) throw Object.assign(new Error(code), { code });
        return (realFiles[name] as (...all: unknown[]) => unknown)(...args);
      },
    } as FileTools;
  };

  test.each([
    ["the disk is full at the first file", "writeSync", 1, "ENOSPC", "no room left on the disk"],
    ["the disk is full at a later file", "writeSync", 3, "ENOSPC", "no room left on the disk"],
    ["the disk is full at the manifest", "writeSync", 6, "ENOSPC", "no room left on the disk"],
    ["the disk is full when files are synced", "fsyncSync", 2, "ENOSPC", "no room left on the disk"],
    ["the folder cannot be renamed", "renameSync", 1, "EACCES", "may not be read or written"],
    ["the manifest cannot be renamed", "renameSync", 2, "EIO", "does not answer"],
    ["the feed stops to be readable half way", "readSync", 2, "EIO", "does not answer"],
  ] as const)("when %s", (_, name, at, code, said) => {
    build(feed, out);
    const before = served(out);
    const report = rebuild(feedOf(5, "Another"), { files: failing(name, at, code) });
    expect(report.switched).toBeUndefined();
    expect(report.stopped).toContain(said);
    expect(report.stopped).toContain("stays as it was");
    expect(served(out)).toEqual(before);
    expect(readdirSync(out).filter((entry) => /half|new/.test(entry))).toEqual([]);
    // The next build works, whatever this one left.
    expect(rebuild(feedOf(5, "Another")).switched).toBeDefined();
  });

  test("when there is no such feed, or it is a folder", () => {
    build(feed, out);
    const before = served(out);
    expect(build(join(folder, "nowhere.csv"), out).stopped).toContain("no such file");
    expect(build(folder, out).stopped).toContain("That is a folder");
    expect(served(out)).toEqual(before);
  });

  test("when the feed cannot be read, or none of its rows", () => {
    build(feed, out);
    const before = served(out);
    expect(rebuild("model,kind\n").stopped).toContain("no number, no name, no price, no currency");
    expect(rebuild(feedOf(0)).stopped).toContain("no row that can be used");
    expect(rebuild(feedOf(3).replaceAll("34.99", "free")).stopped).toContain("no row that can be used");
    expect(served(out)).toEqual(before);
  });

  test("when a strict build meets any problem, which another takes", () => {
    build(feed, out);
    const before = served(out);
    const broken = feedOf(4).replace("34.99", "free");
    expect(rebuild(broken, {}, true).stopped).toContain("The feed has 1 problem, and --strict takes none");
    expect(served(out)).toEqual(before);
    expect(rebuild(broken).switched?.files).toBe(3);
  });

  test("when the build is killed half way, and the next one clears up", async () => {
    build(feed, out);
    const before = served(out);
    const bigger = join(folder, "bigger.csv");
    writeFileSync(bigger, feedOf(50));
    const stalled = fileURLToPath(new URL("catalogue-stalled-build.ts", import.meta.url));
    const child: ChildProcess = spawn(process.execPath, ["--import", "tsx", stalled, bigger, out], {
      cwd: fileURLToPath(new URL("../..", import.meta.url)),
      stdio: ["ignore", "pipe", "inherit"],
    });
    if (!child.stdout) throw new Error("The child has no output");
    for await (const line of createInterface({ input: child.stdout })) {
      expect(line).toBe("first file written");
      break;
    }
    const half = foldersIn().find((name) => name.startsWith("c-half-"));
    expect(readdirSync(join(out, half ?? "", "models"))).toEqual(["WX0.json"]);
    // While it is at work no other one writes there.
    expect(build(feed, out).stopped).toContain("Another command is writing");
    child.kill("SIGKILL");
    expect(await once(child, "exit")).toEqual([null, "SIGKILL"]);
    expect(served(out)).toEqual(before);

    expect(build(bigger, out).switched?.files).toBe(50);
    expect(foldersIn().sort()).toEqual([before?.folder, served(out)?.folder].sort());
  });
});

describe("two builds into one folder", () => {
  test("do not write at once: the later one ends with a sentence, and nothing has changed", () => {
    let later: ReturnType<typeof build> | undefined;
    const lockOf = join(out, ".fridgeside.lock");
    const first = build(feed, out, {
      layOut: (collected) => {
        const { manifest, files } = layOutByModel(collected);
        return { manifest, files: meanwhile(files) };
      },
    });
    function* meanwhile<File>(files: Iterable<File>): Generator<File> {
      // As if another process, which is alive, had begun.
      writeFileSync(lockOf, JSON.stringify({ process: process.ppid, machine: hostname() }));
      later = build(feed, out, { run: 2 });
      yield* files;
    }
    expect(later?.switched).toBeUndefined();
    expect(later?.stopped).toContain(`Another command is writing to ${out}`);
    expect(first.switched?.files).toBe(3);
    expect(readdirSync(out).sort()).toEqual(
      [served(out)?.folder, ".fridgeside.json", "catalogue.json"].sort(),
    );
  });
});

describe("bytes that are no UTF-8", () => {
  test("cost the row that holds them, and its neighbours are kept", () => {
    const [heading = "", ...rows] = feedOf(3, "Bac à glaçons").trimEnd().split("\n");
    const pieces = [Buffer.from(`\uFEFF${heading}\n`), Buffer.from(`${rows[0]}\n`)];
    // The middle row comes from a system that writes ISO 8859-1.
    writeFileSync(
      feed,
      Buffer.concat([...pieces, Buffer.from(`${rows[1]}\n`, "latin1"), Buffer.from(`${rows[2]}\n`)]),
    );
    const { problems, switched } = build(feed, out);
    expect(problems.first).toMatchObject([{ code: "bad-encoding", line: 3 }]);
    expect(switched?.files).toBe(2);
    expect(served(out)?.files["models/WX2.json"]).toContain("Bac à glaçons");
  });

  test("do not come from where a piece of the file ends in the middle of a character", () => {
    // Longer than a piece, with characters of several bytes at changing places.
    const rows = Array.from(
      { length: 7000 },
      (_, at) => `W,M${at % 9},m,ice-bin,N${at},${"x".repeat(at % 3)}${"çà€🧊".repeat(15)},1,EUR`,
    );
    writeFileSync(feed, `brand,model,machine,kind,number,name,price,currency\n${rows.join("\n")}\n`);
    expect(build(feed, out).problems.total).toBe(0);
  });

  test("of a feed in UTF-16 are told as what they are", () => {
    writeFileSync(feed, Buffer.from(`\uFEFF${feedOf(2)}`, "utf16le"));
    expect(build(feed, out).stopped).toContain("Save the feed as UTF-8");
  });
});
