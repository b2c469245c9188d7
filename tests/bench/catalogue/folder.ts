import { readdirSync } from "node:fs";
import { join } from "node:path";
import type { Built } from "./lookups.ts";
import { sampleOf } from "./sample.ts";
import { type createScales, forEachOf, sum, type Weight } from "./weight.ts";

/** What lies in a folder. `weighed` of its files were compressed, all where there are few; the rest is reckoned. */
export type FolderSize = Weight & { files: number; weighed: number };

/** Files of a kind of a built catalogue, by their paths. */
export const filesOf = (built: Built, kind: "models" | "nearby"): string[] =>
  readdirSync(join(built.files, kind), { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map(({ parentPath, name }) => join(parentPath, name));

/** The size of some files, from a sample of them where there are more than `most`. */
export async function sizeOfAll(
  paths: readonly string[],
  weigh: ReturnType<typeof createScales>,
  most: number,
): Promise<FolderSize> {
  const some = paths.length > most ? sampleOf(paths, most, 1) : paths;
  const weights = await forEachOf(some, weigh);
  const scaled = (kind: keyof Weight) =>
    Math.round((sum(weights.map((each) => each[kind])) * paths.length) / Math.max(1, some.length));
  return {
    files: paths.length,
    weighed: some.length,
    raw: scaled("raw"),
    quick: scaled("quick"),
    best: scaled("best"),
  };
}
