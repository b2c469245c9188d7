import { baseOf, foldCode } from "../../catalogue/index.ts";
import {
  addFit,
  type Endings,
  growTree,
  type ModelRow,
  readTree,
  shardPath,
  writeShard,
} from "../../catalogue/shards/index.ts";
import type { Collected } from "../feed/index.ts";
import { findCrowded } from "./crowded.ts";

/** More models than this are not weighed: they are too heavy whatever they are. */
const mostInShard = 1000;

/**
 * What is guessed to be so many times as heavy as allowed is not weighed, since writing it down takes longer than the
 * guess; between them it is.
 */
const surely = { light: 0.7, heavy: 1.4 };

/** Codes that are named where more go on from a typed one; the rest is counted. */
const mostEndings = 6;

/**
 * Spreads models over shards of `most` bytes, as `weigh` counts them, and says how each is written.
 * @param folds the models' folded codes
 */
export function planShards(
  collected: Collected,
  folds: readonly string[],
  weigh: (text: string) => number,
  most: number,
) {
  const { models, offsets, partOf } = collected;
  const textOf = createWriter(collected, findCrowded(folds));
  // By part, the number of the shard that it was last counted for.
  const counted = new Uint32Array(collected.parts.length);
  let count = 0;
  function countParts(places: Uint32Array): number {
    count++;
    let parts = 0;
    for (const model of places) {
      for (let at = offsets[model] as number; at < (offsets[model + 1] as number); at++) {
        const part = partOf[at] as number;
        if (counted[part] !== count) parts++;
        counted[part] = count;
      }
    }
    return parts;
  }
  // Bytes of a model or half a part, as it turns out on the way.
  let each = 0;
  const { tree, leaves } = growTree(folds, (places) => {
    if (places.length > mostInShard) return false;
    const size = places.length + 2 * countParts(places);
    if (each && size * each > most * surely.heavy) return false;
    if (each && size * each < most * surely.light) return true;
    const weight = weigh(textOf(places, undefined));
    each = each ? each * 0.9 + (weight / size) * 0.1 : weight / size;
    return weight <= most;
  });
  return {
    tree,
    *files() {
      const endings = endingsElsewhere(models, folds, readTree(tree));
      for (const [shard, places] of leaves.entries())
        yield { path: shardPath(shard), text: textOf(places, endings.get(shard)) };
    },
  };
}

/** A feed of a million models has each of them written twice or three times: no more objects are made than cells. */
function createWriter({ models, parts, offsets, partOf, conditions }: Collected, crowded: Uint8Array) {
  // By part, its place in the shard, and the number of the shard that it was last taken into.
  const taken = new Uint32Array(parts.length);
  const takenFor = new Uint32Array(parts.length);
  let shard = 0;
  return function textOf(places: Uint32Array, endings: Endings | undefined): string {
    shard++;
    const used: Collected["parts"][number][] = [];
    const rows: ModelRow[] = [];
    for (const model of places) {
      const { code, brand, machine } = models[model] as Collected["models"][number];
      const row: ModelRow = [code, brand, machine, crowded[model] ? 1 : 0, []];
      for (let at = offsets[model] as number; at < (offsets[model + 1] as number); at++) {
        const part = partOf[at] as number;
        if (takenFor[part] !== shard) {
          takenFor[part] = shard;
          taken[part] = used.push(parts[part] as Collected["parts"][number]) - 1;
        }
        addFit(row, taken[part] as number, conditions.get(at));
      }
      rows.push(row);
    }
    return writeShard(rows, used, endings);
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
