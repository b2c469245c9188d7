import { execFileSync, spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** A shop's folder in which the packed package is installed, with its own dependencies and none of the project's tools. */
export type Installed = {
  folder: string;
  /** The package as it lies there. */
  package: string;
  /** What `npm pack` made, and what it called it. */
  tarball: Buffer;
  name: string;
  write(path: string, content: string | Buffer): void;
  /** Runs `fridgeside …` there; `said` is what it printed, to either stream. */
  run(args: string[], input?: string): { status: number | null; said: string };
  /** Runs a line as a shell does there. */
  shell(line: string): { status: number | null; said: string };
  /** Runs a module of that folder's own. */
  node(script: string): { status: number | null; said: string };
  remove(): void;
};

/** Packs as `npm pack` does, and lays it out as `npm install` would. No registry is asked. */
export function installPacked(): Installed {
  const folder = mkdtempSync(join(tmpdir(), "shop of-ours-"));
  const modules = join(folder, "node_modules");
  mkdirSync(modules);
  execFileSync("npm", ["pack", "--silent", "--pack-destination", folder], { cwd: root, stdio: "pipe" });
  const [packed] = execFileSync("ls", [folder], { encoding: "utf8" }).match(/\S+\.tgz/) ?? [];
  const tarball = readFileSync(join(folder, packed ?? ""));
  execFileSync("tar", ["-xzf", packed ?? ""], { cwd: folder });
  execFileSync("mv", [join(folder, "package"), join(modules, "fridgeside")]);
  const lock = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")) as {
    packages: Record<string, { dev?: boolean; optional?: boolean }>;
  };
  for (const [path, { dev, optional }] of Object.entries(lock.packages)) {
    if (dev || optional || !/^node_modules\/(@[^/]+\/)?[^/]+$/.test(path)) continue;
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    symlinkSync(join(root, path), join(folder, path));
  }
  writeFileSync(join(folder, "package.json"), JSON.stringify({ type: "module" }));
  // As npm does with what a package names under `bin`.
  const command = join(modules, "fridgeside/src/cli/fridgeside.mjs");
  mkdirSync(join(modules, ".bin"), { recursive: true });
  chmodSync(command, 0o755);
  symlinkSync(command, join(modules, ".bin/fridgeside"));
  const start = (program: string, args: string[], input = "") => {
    const { status, stdout, stderr } = spawnSync(program, args, { cwd: folder, input, encoding: "utf8" });
    return { status, said: stdout + stderr };
  };
  const run = (args: string[], input = "") => start(process.execPath, args, input);
  return {
    folder,
    package: join(modules, "fridgeside"),
    tarball,
    name: packed ?? "",
    write(path, content) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), content);
    },
    run: (args, input) => run([command, ...args], input),
    shell: (line) => start("bash", ["-c", line]),
    node: (script) => run(["--input-type=module", "--eval", script]),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
