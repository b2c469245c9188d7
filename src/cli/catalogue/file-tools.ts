import * as fs from "node:fs";

/** What a build does to files; a test hands over some that fail. */
export type FileTools = Pick<
  typeof fs,
  | "openSync"
  | "fstatSync"
  | "readSync"
  | "writeSync"
  | "fsyncSync"
  | "closeSync"
  | "mkdirSync"
  | "renameSync"
  | "rmSync"
  | "readdirSync"
  | "readFileSync"
  | "existsSync"
>;

export const realFiles: FileTools = fs;

const reasons: Record<string, string> = {
  ENOSPC: "There is no room left on the disk",
  EDQUOT: "There is no room left for you on the disk",
  ENOENT: "There is no such file or folder",
  EISDIR: "That is a folder",
  ENOTDIR: "That is no folder",
  EACCES: "That may not be read or written",
  EPERM: "That may not be read or written",
  EROFS: "The disk may only be read",
  EIO: "The disk does not answer as it should",
};

/**
 * Why the system refused, in words, with the file where it is known.
 * @throws whatever else went wrong: that is a fault of ours, and no bad feed
 */
export function reasonOf(fault: unknown): string {
  const { code, path, message } = fault as NodeJS.ErrnoException;
  if (code === undefined) throw fault;
  const reason = reasons[code] ?? message;
  return path ? `${reason}: ${path}` : reason;
}
