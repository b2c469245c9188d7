import type { Condition } from "../condition.ts";
import { baseOf } from "../ending.ts";
import { foldCode } from "../model-code.ts";
import { findCrowded } from "./crowded.ts";
import { type Manifest, nearbyPath, shardPath, writeSplit } from "./manifest.ts";
import { writeNearby } from "./nearby.ts";
import { planNearby } from "./plan-nearby.ts";
import { type Endings, type PartRow, writeShard } from "./shard.ts";
import { growTree, readTree } from "./shard-tree.ts";

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

/** How full files may be: bytes of a shard as `weigh` counts them, and codes of the index. */
export type Fill = { bytesInShard: number; codesInNearby: number; codesInBucket: number };
const usual: Fill = { bytesInShard: 2900, codesInNearby: 350, codesInBucket: 500 };

/** More models than this are not weighed: they are too heavy whatever they are. */
const mostInShard = 1000;

/** What is guessed to be so many times too heavy is not weighed: writing it down takes longer than the guess. */
const surelyTooHeavy = 1.7;

/** Codes that are named where more go on from a typed one; the rest is counted. */
const mostEndings = 6;

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

function planShards(
  collected: Collected,
  folds: readonly string[],
  weigh: (text: string) => number,
  most: number,
) {
  const { models, parts, offsets, partOf, conditions } = collected;
  const crowded = findCrowded(folds);
  const rowOf = (model: number) => ({
    ...(models[model] as Collected["models"][number]),
    isCrowded: crowded[model] === 1,
    fits: Array.from({ length: (offsets[model + 1] ?? 0) - (offsets[model] ?? 0) }, (_, place) => {
      const fitment = (offsets[model] ?? 0) + place;
      return { part: partOf[fitment] as number, when: conditions.get(fitment) };
    }),
  });
  const textOf = (places: Uint32Array, endings: Endings) =>
    writeShard(Array.from(places, rowOf), parts, endings);
  // Bytes for a model or half a part, as it turns out on the way.
  let each = 0;
  const { tree, leaves } = growTree(folds, (places) => {
    if (places.length > mostInShard) return false;
    const taken = new Set<number>();
    for (const model of places)
      for (let at = offsets[model] ?? 0; at < (offsets[model + 1] ?? 0); at++)
        taken.add(partOf[at] as number);
    const size = places.length + 2 * taken.size;
    if (size * each > most * surelyTooHeavy) return false;
    const weight = weigh(textOf(places, {}));
    each = each ? each * 0.9 + (weight / Math.max(1, size)) * 0.1 : weight / Math.max(1, size);
    return weight <= most;
  });
  return {
    tree,
    *files() {
      const endings = endingsElsewhere(models, folds, readTree(tree));
      for (const [shard, places] of leaves.entries()) {
        yield { path: shardPath(shard), text: textOf(places, endings.get(shard) ?? {}) };
      }
    },
  };
}

/**
 * Codes that go on where another ends, in the shard of that other one: those in the same shard are found without. Few
 * are left, since a code begins as its base does.
 */
function endingsElsewhere(
  models: Collected["models"],
  folds: readonly string[],
  shardOf: (fold: string) => number,
): Map<number, Endings> {
  const endings = new Map<number, Endings>();
  for (const [model, { code, key }] of models.entries()) {
    const base = baseOf(code);
    if (base === null) continue;
    const fold = foldCode(base);
    const shard = shardOf(fold);
    if (shard === shardOf(folds[model] as string)) continue;
    const own: Endings = endings.get(shard) ?? Object.create(null);
    endings.set(shard, own);
    own[fold] ??= { all: 0, keys: [] };
    own[fold].all++;
    if (own[fold].keys.length < mostEndings) own[fold].keys.push(key);
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
