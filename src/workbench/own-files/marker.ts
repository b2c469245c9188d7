import { join } from "node:path";
import * as z from "zod/mini";
import { type FileTools, isThere, Refusal, removeQuietly } from "./file-tools.ts";

/** The file that says what in a folder is ours. */
export const MARKER = ".fridgeside.json";

/** The commands that write folders. Two of them may write to the same one. */
export type Writer = "build" | "maps" | "pack" | "catalogue";

// A marker is a file like any other: it must not lead out of its folder.
const path = z.string().check(
  z.minLength(1),
  z.maxLength(400),
  z.refine((text) => text.split("/").every((name) => name && name !== "." && name !== "..")),
  z.refine((text) => !/[\\\0:]/.test(text)),
);
const paths = z.array(path).check(z.maxLength(10_000));
const written = z.object({
  /** The newest last; `at` is when it was written (RFC 3339). */
  builds: z
    .array(z.object({ at: z.iso.datetime().check(z.maxLength(40)), files: paths }))
    .check(z.maxLength(10_000)),
  /** What a command is about to write; of a killed one it stays until the next. */
  begun: z._default(paths, []),
});
export const marker = z.object({
  about: z.string().check(z.maxLength(400)),
  format: z.literal(1),
  build: z.optional(written),
  maps: z.optional(written),
  pack: z.optional(written),
  catalogue: z.optional(written),
});

/** What one command wrote into a folder: files, and folders with all that is in them, by path from the folder. */
export type Written = z.infer<typeof written>;
export type Marker = z.infer<typeof marker>;

const about =
  "Written by fridgeside. The files and folders listed here are replaced and removed by it; all others are left alone.";

/** The marker of a folder; an empty one where it has none. @throws Refusal where it cannot be understood */
export function readMarker(folder: string, files: FileTools): Marker {
  const file = join(folder, MARKER);
  if (!isThere(file, files)) return { about, format: 1 };
  try {
    return marker.parse(JSON.parse(files.readFileSync(file, "utf8")));
  } catch {
    throw new Refusal(
      `${file} does not say what in ${folder} may be replaced. Remove that folder, or name another with --out`,
    );
  }
}

/** Writes a marker in one step; one that names nothing is removed. */
export function writeMarker(folder: string, content: Marker, files: FileTools): void {
  const file = join(folder, MARKER);
  const isEmpty = [content.build, content.pack, content.catalogue].every(
    (one) => !one || (one.builds.length === 0 && one.begun.length === 0),
  );
  if (isEmpty) {
    removeQuietly(file, files);
    return;
  }
  try {
    files.writeFileSync(`${file}.new`, `${JSON.stringify(content, null, 1)}\n`);
    files.renameSync(`${file}.new`, file);
  } catch (fault) {
    removeQuietly(`${file}.new`, files);
    throw fault;
  }
}

/** All that a command has listed as its own. */
export function ownPaths({ builds, begun }: Written): Set<string> {
  return new Set([...builds.flatMap((one) => one.files), ...begun]);
}

/**
 * What of the paths that are to be written is there and not listed as ours.
 * @throws Refusal that names it and says what to do
 */
export function refuseForeign(
  folder: string,
  wanted: Iterable<string>,
  own: ReadonlySet<string>,
  files: FileTools,
): void {
  for (const each of wanted)
    if (!own.has(each) && isThere(join(folder, each), files))
      throw new Refusal(
        `${join(folder, each)} is there already, and ${MARKER} does not list it as written by this command. Move it away, or name another folder with --out`,
      );
}
