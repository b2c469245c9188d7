import { dirname, resolve } from "node:path";
import type { FileTools } from "./file-tools.ts";

/**
 * Makes a folder and those above it, one after the other. Node's own `recursive` goes round and round where a folder
 * takes no new ones, as below /proc.
 * @returns the folders that were not there before, the innermost first
 * @throws whatever `files` throws, for the folder that could not be made; those above it are removed again
 */
export function makeFolder(path: string, files: FileTools): string[] {
  const missing: string[] = [];
  let above = resolve(path);
  for (; !isFolder(above, files) && dirname(above) !== above; above = dirname(above)) missing.push(above);
  const made: string[] = [];
  try {
    for (const each of missing.reverse()) {
      files.mkdirSync(each);
      made.unshift(each);
    }
  } catch (fault) {
    removeEmpty(made, files);
    throw fault;
  }
  return made;
}

/** Removes folders again that nothing lies in. */
export function removeEmpty(folders: readonly string[], files: FileTools): void {
  for (const each of folders) {
    try {
      files.rmdirSync(each);
    } catch {
      // Something lies there: it is somebody's.
    }
  }
}

function isFolder(path: string, files: FileTools): boolean {
  try {
    return files.statSync(path).isDirectory();
  } catch {
    // A file on the way, or a link that leads nowhere: making the folder will say so.
    return false;
  }
}
