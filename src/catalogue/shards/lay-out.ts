import type { Condition } from "../condition.ts";
import { baseOf } from "../ending.ts";
import { foldCode } from "../model-code.ts";
import { findCrowded } from "./crowded.ts";
import { hashText } from "./hash.ts";
import { type Manifest, nearbyPath, shardPath, writeSplit } from "./manifest.ts";
import { writeNearby } from "./nearby.ts";
import { planNearby } from "./plan-nearby.ts";
import { type Endings, type PartRow, writeShard } from "./shard.ts";

/** All that a feed holds, read and checked. Lists of numbers instead of objects: a feed may have millions of rows. */
export type Collected = {
  shop?: string;
  /** `code` as printed, `key` normalised. */
  models: readonly { code: string; key: string; brand: string; machine: string }[];
  parts: readonly PartRow[];
  /** The fitments of model m are those from offsets[m] to before offsets[m + 1]. */
  offsets: Uint32Array;
  /** A place in `parts`, by fitment. */
  partOf: Uint32Array;
  /** By fitment; few have one. */
  conditions: ReadonlyMap<number, Condition>;
};

export type LaidOut = {
  manifest: Omit<Manifest, "folder">;
  /** Paths from the manifest's folder on. */
  files: Iterable<{ path: string; text: string }>;
};

/** How full files are; the defaults keep a lookup within 3 kB and a search within 20 kB of brotli. */
export type Fill = { fitmentsInShard: number; codesInNearby: number; codesInBucket: number };
const usual: Fill = { fitmentsInShard: 160, codesInNearby: 350, codesInBucket: 500 };

/** Codes that are named where more go on from a typed one; the rest is counted. */
const mostEndings = 6;

/**
 * Spreads a catalogue over files that a phone can ask one by one. A model lies in the shard of its folded code, beside
 * all that look like it; the index says which codes are one slip away. The same catalogue always gives the same files.
 */
export function layOut(collected: Collected, fill: Fill = usual): LaidOut {
  const { models, partOf } = collected;
  const folds = models.map(({ key }) => foldCode(key));
  const shards = Math.max(1, Math.ceil(Math.max(partOf.length, models.length * 4) / fill.fitmentsInShard));
  const nearby = planNearby(folds, fill);
  const shop = collected.shop ? { shop: collected.shop } : {};
  return {
    manifest: {
      format: "fridgeside-shards-1",
      ...shop,
      models: models.length,
      shards,
      nearby: nearby.files,
      split: writeSplit(nearby.split),
    },
    files: writeFiles(),
  };

  function* writeFiles() {
    for (const { file, entries } of nearby.filled()) {
      const keys = new Set(entries.map((entry) => models[entry]?.key as string));
      yield { path: nearbyPath(file, nearby.files), text: writeNearby([...keys]) };
    }
    yield* shardFiles(collected, folds, shards);
  }
}

function* shardFiles(collected: Collected, folds: readonly string[], shards: number) {
  const { models, parts, offsets, partOf, conditions } = collected;
  const crowded = findCrowded(folds);
  const endings = endingsOf(models);
  const fitsOf = (model: number) =>
    Array.from({ length: (offsets[model + 1] ?? 0) - (offsets[model] ?? 0) }, (_, place) => {
      const fitment = (offsets[model] ?? 0) + place;
      return { part: partOf[fitment] as number, when: conditions.get(fitment) };
    });
  const endingFolds = [...endings.keys()];
  const modelsIn = groupBy(folds.length, shards, (model) => hashText(folds[model] as string) % shards);
  const endingsIn = groupBy(
    endingFolds.length,
    shards,
    (place) => hashText(endingFolds[place] as string) % shards,
  );
  for (let shard = 0; shard < shards; shard++) {
    const own: Endings = Object.create(null);
    for (const place of endingsIn(shard)) {
      const keys = endings.get(endingFolds[place] as string) as string[];
      own[endingFolds[place] as string] = { all: keys.length, keys: keys.slice(0, mostEndings) };
    }
    const rows = [...modelsIn(shard)].map((model) => ({
      ...(models[model] as Collected["models"][number]),
      isCrowded: crowded[model] === 1,
      fits: fitsOf(model),
    }));
    yield { path: shardPath(shard, shards), text: writeShard(rows, parts, own) };
  }
}

/** The codes that go on where another ends, by the folded code that they go on from. */
function endingsOf(models: Collected["models"]): Map<string, string[]> {
  const endings = new Map<string, string[]>();
  for (const { code, key } of models) {
    const base = baseOf(code);
    if (base === null) continue;
    const fold = foldCode(base);
    const keys = endings.get(fold);
    if (keys) keys.push(key);
    else endings.set(fold, [key]);
  }
  return endings;
}

/** Places 0 to `count` by their group, without an object for each: a counting sort. */
export function groupBy(count: number, groups: number, groupOf: (place: number) => number) {
  const starts = new Uint32Array(groups + 1);
  const group = Uint32Array.from({ length: count }, (_, place) => groupOf(place));
  for (const each of group) starts[each + 1] = (starts[each + 1] ?? 0) + 1;
  for (let each = 0; each < groups; each++) starts[each + 1] = (starts[each + 1] ?? 0) + (starts[each] ?? 0);
  const next = starts.slice();
  const sorted = new Uint32Array(count);
  for (let place = 0; place < count; place++) {
    const at = group[place] as number;
    sorted[next[at] as number] = place;
    next[at] = (next[at] as number) + 1;
  }
  return (each: number) => sorted.subarray(starts[each], starts[each + 1]);
}
