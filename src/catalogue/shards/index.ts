/** A catalogue spread over many small files, for shops with more models than a phone should load. */
export { type Fill, type LaidOut, layOut } from "./lay-out.ts";
export { createShardedCatalogue, type ReadFile } from "./lookup.ts";
export { type Manifest, parseManifest } from "./manifest.ts";
