import { foldCode } from "../../catalogue/index.ts";
import { type Manifest, nearbyPath, writeNearby, writeSplit } from "../../catalogue/shards/index.ts";
import type { Collected } from "../feed/index.ts";
import { planNearby } from "./plan-nearby.ts";
import { planShards } from "./plan-shards.ts";

export type LaidOut = {
  manifest: Omit<Manifest, "folder">;
  /** Paths from the manifest's folder on. */
  files: Iterable<{ path: string; text: string }>;
};

/** How full files may be: bytes of a shard as `weigh` counts them, and codes of the index. */
export type Fill = { bytesInShard: number; codesInNearby: number; codesInBucket: number };
const usual: Fill = { bytesInShard: 2900, codesInNearby: 350, codesInBucket: 500 };

/**
 * Spreads a catalogue over files that a phone can ask one by one. A model lies in the shard of its folded code, beside
 * all that look like it; the index says which codes are one slip away. The same catalogue always gives the same files.
 * @param weigh how many bytes a text is on its way to a phone
 */
export function layOut(collected: Collected, weigh: (text: string) => number, fill: Fill = usual): LaidOut {
  const { models } = collected;
  const folds = models.map(({ key }) => foldCode(key));
  const nearby = planNearby(folds, fill);
  const shards = planShards(collected, folds, weigh, fill.bytesInShard);
  const shop = collected.shop ? { shop: collected.shop } : {};
  return {
    manifest: {
      format: "fridgeside-shards-1",
      ...shop,
      models: models.length,
      tree: shards.tree,
      nearby: nearby.files,
      split: writeSplit(nearby.split),
    },
    files: writeFiles(),
  };

  function* writeFiles() {
    for (const [file, entries] of nearby.codesByFile()) {
      const keys = new Set(Array.from(entries, (entry) => models[entry]?.key as string));
      yield { path: nearbyPath(file, nearby.files), text: writeNearby([...keys]) };
    }
    yield* shards.files();
  }
}
