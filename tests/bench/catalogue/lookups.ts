import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { FindResult } from "../../../src/catalogue/index.ts";
import { isManifest } from "../../../src/catalogue/index.ts";
import { createShardedCatalogue, type Manifest, parseManifest } from "../../../src/catalogue/shards/index.ts";

/** A built catalogue as it lies in a folder: its manifest, that file, and the folder of the other files. */
export type Built = { manifest: Manifest; file: string; files: string };

/** Finds the manifest of a folder that was built. @throws Error where there is none */
export function openBuilt(folder: string): Built {
  for (const name of readdirSync(folder).filter((each) => each.endsWith(".json"))) {
    const file = join(folder, name);
    const json: unknown = JSON.parse(readFileSync(file, "utf8"));
    const manifest = isManifest(json) ? parseManifest(json) : null;
    if (manifest) return { manifest, file, files: join(folder, manifest.folder) };
  }
  throw new Error(`There is no manifest in ${folder}`);
}

/**
 * One lookup by somebody whose phone has nothing yet but the manifest. `files`: what was asked for, in that order;
 * `widest`: how many at once at most; `rounds`: how often it had to wait for answers.
 */
export type Lookup = {
  result: FindResult;
  files: { path: string; json: unknown }[];
  widest: number;
  rounds: number;
};

export async function lookUp(built: Built, typed: string): Promise<Lookup> {
  const lookup: Omit<Lookup, "result"> = { files: [], widest: 0, rounds: 0 };
  let underway = 0;
  const catalogue = createShardedCatalogue(built.manifest, async (path) => {
    if (underway === 0) lookup.rounds++;
    lookup.widest = Math.max(lookup.widest, ++underway);
    const file = join(built.files, path);
    const json: unknown = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : null;
    lookup.files.push({ path, json });
    // All that is asked for side by side is underway before the first answer.
    await new Promise((resolve) => setImmediate(resolve));
    underway--;
    return json;
  });
  return {
    ...lookup,
    result: await catalogue.findModel(typed),
    widest: lookup.widest,
    rounds: lookup.rounds,
  };
}
