import * as fs from "node:fs";

/** What a command does to files; a test hands over some that fail. */
export type FileTools = Pick<
  typeof fs,
  | "openSync"
  | "fstatSync"
  | "statSync"
  | "lstatSync"
  | "readSync"
  | "writeSync"
  | "fsyncSync"
  | "closeSync"
  | "mkdirSync"
  | "renameSync"
  | "linkSync"
  | "rmSync"
  | "rmdirSync"
  | "readdirSync"
  | "readFileSync"
  | "writeFileSync"
  | "existsSync"
>;

export const realFiles: FileTools = fs;

const reasons: Record<string, string> = {
  ENOSPC: "There is no room left on the disk",
  EDQUOT: "There is no room left for you on the disk",
  ENOENT: "There is no such file or folder",
  EISDIR: "That is a folder",
  ENOTDIR: "That is no folder",
  EEXIST: "Something else lies there",
  EACCES: "That may not be read or written",
  EPERM: "That may not be read or written",
  EROFS: "The disk may only be read",
  EIO: "The disk does not answer as it should",
};

/** Nothing was written, for a reason that the person who called can do something about; the message says what. */
export class Refusal extends Error {}

/**
 * Why a file could not be read or written, in words, with the file where it is known.
 * @throws whatever else went wrong: that is a fault of ours
 */
export function reasonOf(fault: unknown): string {
  if (fault instanceof Refusal) return fault.message;
  const { code, path, message } = fault as NodeJS.ErrnoException;
  if (typeof code !== "string" || !/^E(?!RR_)[A-Z\d]+$/.test(code)) throw fault;
  const reason = reasons[code] ?? message;
  return path ? `${reason}: ${path}` : reason;
}

/** Whether anything has this name: a file, a folder, or a link, even one that leads nowhere. */
export function isThere(path: string, files: FileTools): boolean {
  return files.lstatSync(path, { throwIfNoEntry: false }) !== undefined;
}

/** What cannot be removed costs room and nothing else. */
export function removeQuietly(path: string, files: FileTools): void {
  try {
    files.rmSync(path, { recursive: true, force: true });
  } catch {}
}
