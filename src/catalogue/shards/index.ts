/** A catalogue spread over many small files, for shops with more models than a phone should load. */

export { finish } from "./hash.ts";
export { createShardedCatalogue } from "./lookup.ts";
export { type Manifest, nearbyPath, parseManifest, shardPath, writeSplit } from "./manifest.ts";
export { canSplit, filedIn } from "./near-keys.ts";
export { writeNearby } from "./nearby.ts";
export { addFit, type Endings, type ModelRow, writeShard } from "./shard.ts";
export { growTree, readTree } from "./shard-tree.ts";
