import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../", import.meta.url));

/** All that a build is made of. */
export const sources = ["src", "flows", "locales", "package.json", "package-lock.json"];

/** What was made once of the same sources, for every process that asks later. */
export type Kept = { read<Made>(key: string): Made | null; keep<Made>(key: string, made: Made): Made };

/** A place below `.cache` for what is made of these sources, as JSON; what was made of earlier ones is removed. */
export function openKept(name: string, sources: string[]): Kept {
  const digest = digestOf(sources);
  const place = `${root}.cache/${name}`;
  mkdirSync(join(place, digest), { recursive: true });
  for (const older of readdirSync(place))
    if (older !== digest) rmSync(join(place, older), { recursive: true, force: true });
  const fileOf = (key: string) =>
    join(place, digest, `${createHash("sha256").update(key).digest("hex").slice(0, 16)}.json`);
  return {
    read: (key) => {
      try {
        return JSON.parse(readFileSync(fileOf(key), "utf8"));
      } catch {
        return null;
      }
    },
    // Written beside its place first: two processes may write at one time, and neither may read half a file.
    keep: (key, made) => {
      const half = `${fileOf(key)}.${process.pid}`;
      writeFileSync(half, JSON.stringify(made));
      renameSync(half, fileOf(key));
      return made;
    },
  };
}

function digestOf(sources: string[]): string {
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
