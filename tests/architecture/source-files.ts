import { readdirSync, readFileSync } from "node:fs";

/** A file of the repository by its path from the top, with forward slashes. */
export type SourceFile = { path: string; source: string };

const root = new URL("../../", import.meta.url);

/** What is built or installed and not ours: the names in .gitignore. */
const ignored = readFileSync(new URL(".gitignore", root), "utf8")
  .split("\n")
  .map((line) => line.replace(/\/$/, ""))
  .filter(Boolean);

/** Whatever lies at the top of the repository, but for the hidden and the ignored. */
export function topEntries(): string[] {
  return readdirSync(root).filter((name) => !name.startsWith(".") && !ignored.includes(name));
}

/** The paths of all files below a folder. */
export function pathsBelow(folder: string): string[] {
  return readdirSync(new URL(`${folder}/`, root), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (ignored.includes(entry.name)) return [];
    return entry.isDirectory() ? pathsBelow(path) : [path];
  });
}

/** The text of one file. */
export function readSource(path: string): string {
  return readFileSync(new URL(path, root), "utf8");
}

/** All files of text below a folder, read. */
export function sourceFiles(folder: string): SourceFile[] {
  return pathsBelow(folder)
    .filter((path) => /\.(tsx?|m?js|css|html|ya?ml)$/.test(path))
    .map((path) => ({ path, source: readSource(path) }));
}
