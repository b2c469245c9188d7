import { hostname } from "node:os";
import { join } from "node:path";
import { type FileTools, Refusal, removeQuietly } from "./file-tools.ts";

const LOCK = ".fridgeside.lock";

/**
 * How long another machine's lock holds: a catalogue of a million models is written in three minutes (judgement).
 * Whether a build on this machine still runs is asked of the system.
 */
const longestWrite = 60 * 60 * 1000;

/**
 * Does something in a folder that no other command may change meanwhile. What a killed command left does not hold.
 * @throws Refusal where another command is writing there; else whatever `work` or `files` throws
 */
export function withLock<Result>(folder: string, files: FileTools, work: () => Result): Result {
  const lock = join(folder, LOCK);
  const own = JSON.stringify({ process: process.pid, machine: hostname() });
  if (!take(lock, own, files)) {
    const held = heldBy(lock, files);
    if (held !== null && !isLeftOver(held, lock, files))
      throw new Refusal(
        `Another command is writing to ${folder} (${held}). Wait until it has ended; if none runs, remove ${lock}`,
      );
    if (held !== null) clear(lock, held, files);
    if (!take(lock, own, files)) throw new Refusal(`Another command has just begun to write to ${folder}`);
  }
  try {
    return work();
  } finally {
    removeQuietly(lock, files);
  }
}

function take(lock: string, own: string, files: FileTools): boolean {
  try {
    files.writeFileSync(lock, own, { flag: "wx" });
    return true;
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw fault;
  }
}

function heldBy(lock: string, files: FileTools): string | null {
  try {
    return files.readFileSync(lock, "utf8");
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === "ENOENT") return null;
    throw fault;
  }
}

function isLeftOver(held: string, lock: string, files: FileTools): boolean {
  const since = files.statSync(lock, { throwIfNoEntry: false })?.mtimeMs;
  if (since === undefined || Date.now() - since > longestWrite) return true;
  try {
    const { process: id, machine } = JSON.parse(held);
    // Writing is one uninterrupted step: a lock of this very process is one that a container before this one left.
    return machine === hostname() && (id === process.pid || !isRunning(id));
  } catch {
    // Killed, or still busy, between making the file and writing to it.
    return Date.now() - since > 10_000;
  }
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (fault) {
    return (fault as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** Of two that find the same left-over lock only one may clear it, and none the new lock of the other. */
function clear(lock: string, held: string, files: FileTools): void {
  const aside = `${lock}.${process.pid}`;
  try {
    files.renameSync(lock, aside);
  } catch {
    return;
  }
  if (files.readFileSync(aside, "utf8") !== held) {
    try {
      files.linkSync(aside, lock);
    } catch {}
  }
  removeQuietly(aside, files);
}
