import { createHash } from "node:crypto";
import { dirname, join } from "node:path";
import {
  type FileTools,
  isThere,
  makeFolder,
  ownPaths,
  readMarker,
  refuseForeign,
  removeEmpty,
  removeQuietly,
  type Written,
  withLock,
  writeMarker,
} from "../../workbench/own-files/index.ts";

/** A catalogue as files, and the one file that leads to them. */
export type LaidOut = { manifest: object; files: Iterable<{ path: string; text: string }> };

/** What was written. */
export type Switched = { folder: string; files: number; bytes: number };

const MANIFEST = "catalogue.json";
const NEXT = `${MANIFEST}.new`;

/**
 * Writes a catalogue beside the one that is served and switches to it in one step: whatever happens before, a page
 * reads the old one, and after it the new one, whole. The folder of the old one stays for pages that are open; older
 * ones and half-written ones are removed, where the marker of `out` lists them as ours.
 * @param run tells this run's half-written folder from another's
 * @throws Refusal where another build is writing there, or something that is not ours lies in the way; whatever `files`
 * throws. The old catalogue is untouched then
 */
export function switchCatalogue(
  out: string,
  laidOut: LaidOut,
  files: FileTools,
  run: number,
  now: Date,
): Switched {
  const made = makeFolder(out, files);
  try {
    return withLock(out, files, () => writeAndSwitch(out, laidOut, files, run, now));
  } catch (fault) {
    removeEmpty(made, files);
    throw fault;
  }
}

function writeAndSwitch(
  out: string,
  { manifest, files: laidOut }: LaidOut,
  files: FileTools,
  run: number,
  now: Date,
): Switched {
  const half = `c-half-${run}`;
  const growing = join(out, half);
  const marker = readMarker(out, files);
  const { builds, begun }: Written = marker.catalogue ?? { builds: [], begun: [] };
  const own = ownPaths({ builds, begun });
  refuseForeign(out, [MANIFEST, NEXT, half], own, files);
  const before = servedFolder(out, files);
  const mark = (written: Written) => writeMarker(out, { ...marker, catalogue: written }, files);
  const mine = [MANIFEST, NEXT, half];
  try {
    mark({ builds, begun: [...begun, ...mine] });
    const written = writeAll(growing, laidOut, files);
    const folder = `c-${written.digest}`;
    refuseForeign(out, [folder], own, files);
    mine.push(folder);
    mark({ builds, begun: [...begun, ...mine] });
    // The same content was written before, whole: only then does a folder get this name.
    if (files.existsSync(join(out, folder))) files.rmSync(growing, { recursive: true });
    else files.renameSync(growing, join(out, folder));
    syncPath(out, files);
    const next = join(out, NEXT);
    writeFile(next, JSON.stringify({ ...manifest, folder }), files);
    syncPath(next, files);
    files.renameSync(next, join(out, MANIFEST));
    syncPath(out, files);
    const listed = builds.flatMap((one) => one.files);
    const stays = new Set([MANIFEST, folder, ...(before === null || before === folder ? listed : [before])]);
    for (const path of own) if (!stays.has(path)) removeQuietly(join(out, path), files);
    const earlier = builds
      .map((one) => ({
        ...one,
        files: one.files.filter((path) => ![folder, MANIFEST].includes(path) && stays.has(path)),
      }))
      .filter((one) => one.files.length > 0);
    mark({ builds: [...earlier, { at: now.toISOString(), files: [folder, MANIFEST] }], begun: [] });
    return { folder, files: written.count, bytes: written.bytes };
  } catch (fault) {
    const served = servedFolder(out, files);
    for (const path of mine)
      if (!own.has(path) && path !== served && path !== MANIFEST) removeQuietly(join(out, path), files);
    removeQuietly(growing, files);
    removeQuietly(join(out, NEXT), files);
    // What could not be removed, or is served all the same, is still ours.
    const left = mine.filter((path) => !own.has(path) && isThere(join(out, path), files));
    if (left.length > 0) mark({ builds, begun: [...begun, ...left] });
    else writeMarker(out, marker, files);
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
