import { createHash } from "node:crypto";
import { dirname, join } from "node:path";
import type { FileTools } from "./file-tools.ts";

/** A catalogue as files, and the one file that leads to them. */
export type LaidOut = { manifest: object; files: Iterable<{ path: string; text: string }> };

/** What was written. */
export type Switched = { folder: string; files: number; bytes: number };

const MANIFEST = "catalogue.json";
const finished = /^c-[0-9a-f]{12}$/;
const half = /^c-half-\d+$/;

/**
 * Writes a catalogue beside the one that is served and switches to it in one step: whatever happens before, a page
 * reads the old one, and after it the new one, whole. The folder of the old one stays for pages that are open; older
 * ones and half-written ones are removed.
 * @param run tells this run's half-written folder from another's
 * @throws whatever `files` throws; the old catalogue is untouched then
 */
export function switchCatalogue(
  out: string,
  { manifest, files: laidOut }: LaidOut,
  files: FileTools,
  run: number,
): Switched {
  files.mkdirSync(out, { recursive: true });
  const before = servedFolder(out, files);
  const growing = join(out, `c-half-${run}`);
  try {
    const written = writeAll(growing, laidOut, files);
    const folder = `c-${written.digest}`;
    // The same content was written before, whole: only then does a folder get this name.
    if (files.existsSync(join(out, folder))) files.rmSync(growing, { recursive: true });
    else files.renameSync(growing, join(out, folder));
    syncPath(out, files);
    const next = join(out, `${MANIFEST}.new`);
    writeFile(next, JSON.stringify({ ...manifest, folder }), files);
    syncPath(next, files);
    files.renameSync(next, join(out, MANIFEST));
    syncPath(out, files);
    removeOthers(out, before === folder ? null : [folder, before], files);
    return { folder, files: written.count, bytes: written.bytes };
  } catch (fault) {
    removeQuietly(growing, files);
    removeQuietly(join(out, `${MANIFEST}.new`), files);
    throw fault;
  }
}

function writeAll(folder: string, laidOut: LaidOut["files"], files: FileTools) {
  files.rmSync(folder, { recursive: true, force: true });
  files.mkdirSync(folder);
  const digest = createHash("sha256");
  const folders = new Set([folder]);
  const paths: string[] = [];
  let bytes = 0;
  for (const { path, text } of laidOut) {
    const whole = join(folder, path);
    for (let above = dirname(whole); !folders.has(above); above = dirname(above)) {
      files.mkdirSync(above, { recursive: true });
      folders.add(above);
    }
    bytes += writeFile(whole, text, files);
    digest.update(path).update("\0").update(text).update("\0");
    paths.push(whole);
  }
  // All are written before the first is waited for: the disk then takes most of them in one go.
  for (const path of paths) syncPath(path, files);
  for (const each of folders) syncPath(each, files);
  return { digest: digest.digest("hex").slice(0, 12), count: paths.length, bytes };
}

function writeFile(path: string, text: string, files: FileTools): number {
  const bytes = Buffer.from(text);
  const file = files.openSync(path, "w");
  try {
    // A disk that is almost full takes a part and refuses the rest.
    for (let done = 0; done < bytes.length; ) done += files.writeSync(file, bytes, done);
  } finally {
    files.closeSync(file);
  }
  return bytes.length;
}

function syncPath(path: string, files: FileTools): void {
  const file = files.openSync(path, "r");
  try {
    files.fsyncSync(file);
  } finally {
    files.closeSync(file);
  }
}

function servedFolder(out: string, files: FileTools): string | null {
  try {
    const { folder } = JSON.parse(files.readFileSync(join(out, MANIFEST), "utf8"));
    return typeof folder === "string" ? folder : null;
  } catch {
    // None yet, or none that a page could read.
    return null;
  }
}

/** @param kept finished folders that stay; null keeps them all, for the content has not changed */
function removeOthers(out: string, kept: (string | null)[] | null, files: FileTools): void {
  for (const name of files.readdirSync(out))
    if (half.test(name) || (kept && finished.test(name) && !kept.includes(name)))
      removeQuietly(join(out, name), files);
}

/** What cannot be removed costs room and nothing else. */
function removeQuietly(path: string, files: FileTools): void {
  try {
    files.rmSync(path, { recursive: true, force: true });
  } catch {}
}
