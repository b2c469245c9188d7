import { dirname, join } from "node:path";
import { type FileTools, isThere, Refusal, realFiles, removeQuietly } from "./file-tools.ts";
import { withLock } from "./lock.ts";
import { makeFolder, removeEmpty } from "./make-folder.ts";
import { ownPaths, readMarker, refuseForeign, type Writer, type Written, writeMarker } from "./marker.ts";

/** A file by its path from the folder, with forward slashes. */
export type OwnFile = { path: string; content: string | Uint8Array };

export type WriteOptions = {
  writer: Writer;
  /** Whether a file is named by its content, so that browsers may keep it for ever. */
  isNamedByContent?(path: string): boolean;
  /** How many of the latest builds keep their files, this one included; at least 1. */
  keep?: number;
  /** Files of a build also stay for so many days after another took its place. */
  keepDays?: number;
  now: Date;
  files?: FileTools;
};

const HALF = ".fridgeside-half";
const DAY = 24 * 60 * 60 * 1000;

/**
 * Writes the files of one build into a folder, and removes those of builds that are not kept any more. Files that are
 * named by their content come first, the others then take their places in one step each. What the marker does not list
 * is neither replaced nor removed.
 * @throws Refusal where something else lies at a file's place, or a name would get another content; whatever `files`
 * throws where nothing can be written. Nothing new is left behind then.
 */
export function writeOwnFiles(out: string, content: readonly OwnFile[], options: WriteOptions): void {
  const { writer, now, isNamedByContent = () => false, files = realFiles } = options;
  const made = makeFolder(out, files);
  try {
    withLock(out, files, () => {
      const marker = readMarker(out, files);
      const before: Written = marker[writer] ?? { builds: [], begun: [] };
      const own = ownPaths(before);
      const paths = content.map(({ path }) => path);
      refuseForeign(out, [...paths, HALF], own, files);
      const changed = content.filter((each) => isChanged(out, each, files));
      for (const { path } of changed)
        if (isNamedByContent(path) && isThere(join(out, path), files))
          throw new Refusal(
            `${join(out, path)} has another content than this build gives that name. Browsers keep it for ever, so nothing was written`,
          );
      const begun = [...new Set([...before.begun, ...paths, HALF])];
      writeMarker(out, { ...marker, [writer]: { ...before, begun } }, files);
      try {
        placeAll(out, changed, isNamedByContent, files);
      } catch (fault) {
        const kept = new Set(before.builds.flatMap((one) => one.files));
        for (const { path } of changed) if (!kept.has(path)) removeQuietly(join(out, path), files);
        removeEmpty(foldersOf(out, paths), files);
        removeQuietly(join(out, HALF), files);
        writeMarker(out, marker, files);
        throw fault;
      }
      const builds = keptBuilds([...before.builds, { at: now.toISOString(), files: paths }], options);
      const stays = new Set(builds.flatMap((one) => one.files));
      const goes = [...begun, ...own].filter((path) => !stays.has(path));
      for (const path of goes) removeQuietly(join(out, path), files);
      removeEmpty(foldersOf(out, goes), files);
      writeMarker(out, { ...marker, [writer]: { builds, begun: [] } }, files);
    });
  } catch (fault) {
    removeEmpty(made, files);
    throw fault;
  }
}

/** Whether a file is not there yet, or is there with other bytes. */
function isChanged(out: string, { path, content }: OwnFile, files: FileTools): boolean {
  const whole = join(out, path);
  return !isThere(whole, files) || !files.readFileSync(whole).equals(Buffer.from(content));
}

/** Writes everything aside first: until the disk has taken all of it, nothing that is served changes. */
function placeAll(
  out: string,
  changed: readonly OwnFile[],
  isFirst: (path: string) => boolean,
  files: FileTools,
): void {
  const half = join(out, HALF);
  files.rmSync(half, { recursive: true, force: true });
  files.mkdirSync(half);
  for (const [index, { content }] of changed.entries())
    files.writeFileSync(join(half, String(index)), content);
  const order = [...changed.keys()].sort((a, b) => rank(changed[a]) - rank(changed[b]));
  for (const index of order) {
    const whole = join(out, changed[index]?.path ?? "");
    makeFolder(dirname(whole), files);
    files.renameSync(join(half, String(index)), whole);
  }
  removeQuietly(half, files);

  function rank(file: OwnFile | undefined): number {
    return file && isFirst(file.path) ? 0 : 1;
  }
}

/** The builds that keep their files, the newest last. A build was in use until the next one took its place. */
function keptBuilds(
  builds: Written["builds"],
  { keep = 1, keepDays = 0, now }: WriteOptions,
): Written["builds"] {
  const latest = builds.at(-1)?.files ?? [];
  // The same build once more only tells that it is the latest.
  const different = builds.filter((one, at) => at === builds.length - 1 || !isSame(one.files, latest));
  return different.filter((_, at) => {
    const replacedAt = different[at + 1]?.at;
    if (at >= different.length - keep || replacedAt === undefined) return true;
    return now.getTime() - Date.parse(replacedAt) < keepDays * DAY;
  });
}

function isSame(files: readonly string[], others: readonly string[]): boolean {
  return files.length === others.length && files.every((path) => others.includes(path));
}

/** The folders that paths lie in, below `out`, the innermost first. */
function foldersOf(out: string, paths: readonly string[]): string[] {
  const folders = new Set<string>();
  for (const path of paths)
    for (let above = dirname(path); above !== "."; above = dirname(above)) folders.add(above);
  return [...folders].sort((a, b) => b.length - a.length).map((folder) => join(out, folder));
}
