import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { OwnFile } from "../own-files/index.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));

/** Whether the script came with the package, without what it is made of. */
export const comesBuilt = (from = root) => !existsSync(join(from, "src/embed"));

/**
 * The files that came with the package, where it came without what they are made of: a shop gets the very script that
 * was tested, and needs no bundler. Null in the project itself.
 * @throws whatever the file system throws where they cannot be read
 */
export function builtFiles(folder: "dist" | "maps" = "dist", from = root): OwnFile[] | null {
  if (!comesBuilt(from)) return null;
  const dist = join(from, folder);
  return readdirSync(dist, { recursive: true, encoding: "utf8" })
    .filter((name) => statSync(join(dist, name)).isFile() && !name.startsWith("."))
    .sort()
    .map((name) => ({ path: name.replaceAll("\\", "/"), content: readFileSync(join(dist, name)) }));
}
