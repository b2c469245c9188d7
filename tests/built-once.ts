import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { bundleEmbed } from "../src/workbench/build/build.ts";
import type { OwnFile } from "../src/workbench/own-files/index.ts";

const root = fileURLToPath(new URL("../", import.meta.url));
const kept = `${root}.cache/built`;

/** All that a build is made of. */
const sources = ["src", "flows", "locales", "package.json", "package-lock.json"];

/**
 * What a shop embeds, as the build gives it, made once for all tests of the same sources: unit tests and browser tests
 * take it from `.cache/built`, where it lies by a digest of the sources.
 */
export async function builtOnce(): Promise<OwnFile[]> {
  const file = `${kept}/${digestOfSources()}.json`;
  return readKept(file) ?? keep(file, await bundleEmbed());
}

function readKept(file: string): OwnFile[] | null {
  try {
    const entries = JSON.parse(readFileSync(file, "utf8")) as [string, string][];
    return entries.map(([path, content]) => ({ path, content: Buffer.from(content, "base64") }));
  } catch {
    return null;
  }
}

/** Written beside its place first: two tests may build at one time, and neither may read half a file. */
function keep(file: string, files: OwnFile[]): OwnFile[] {
  const entries = files.map(({ path, content }) => [path, Buffer.from(content).toString("base64")]);
  const half = `${file}.${process.pid}`;
  mkdirSync(kept, { recursive: true });
  for (const older of readdirSync(kept)) if (older.endsWith(".json")) rmSync(join(kept, older));
  writeFileSync(half, JSON.stringify(entries));
  renameSync(half, file);
  return files;
}

function digestOfSources(): string {
  const digest = createHash("sha256").update(process.version);
  for (const source of sources)
    for (const path of filesIn(source)) digest.update(path).update(readFileSync(root + path));
  return digest.digest("hex").slice(0, 16);
}

function filesIn(path: string): string[] {
  if (path.includes(".")) return [path];
  return readdirSync(root + path, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => join(each.parentPath, each.name).slice(root.length))
    .sort();
}
