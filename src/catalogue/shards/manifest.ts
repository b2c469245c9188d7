import * as z from "zod/mini";
import { bounds } from "../bounds.ts";
import type { IsSplit } from "./near-keys.ts";

const count = z.int().check(z.positive());

const text = z.string().check(z.maxLength(bounds.manifestText));

/** The shape of a manifest. */
export const manifestShape = z.object({
  format: z.literal("fridgeside-shards-1"),
  folder: z.string().check(z.maxLength(bounds.label), z.regex(/^[\w-]+$/)),
  shop: z.optional(z.string().check(z.maxLength(bounds.name))),
  models: count.check(z.maximum(bounds.allModels)),
  tree: text,
  nearby: count.check(z.maximum(bounds.files)),
  split: text,
});

/**
 * What a phone must know before it asks a catalogue of many files: in which folder they lie, which shard holds which
 * codes, how many files the index has and which of its buckets were split.
 */
export type Manifest = z.infer<typeof manifestShape>;

/** A manifest that was fetched, or null for anything that is none. Never throws. */
export function parseManifest(json: unknown): Manifest | null {
  const parsed = manifestShape.safeParse(json);
  return parsed.success ? parsed.data : null;
}

/** Buckets in ascending order, as the differences between them in base 36: half as long as the numbers themselves. */
export function writeSplit(buckets: Iterable<number>): string {
  const sorted = [...buckets].sort((a, b) => a - b);
  return sorted.map((bucket, at) => (bucket - (sorted[at - 1] ?? 0)).toString(36)).join(",");
}

/** The reverse of `writeSplit`. What is no number ends the list. */
export function readSplit(text: string): IsSplit {
  const buckets = new Set<number>();
  let sum = 0;
  for (const step of text.split(",")) {
    sum += Number.parseInt(step, 36);
    if (!Number.isFinite(sum)) break;
    buckets.add(sum);
  }
  return (bucket) => buckets.has(bucket);
}

/** Where a shard lies, from the manifest's folder on. */
export const shardPath = (shard: number) => filePath("models", shard);

/** Where the file lies that holds a bucket of the index. */
export const nearbyPath = (bucket: number, nearby: number) => filePath("nearby", bucket % nearby);

/** At most 256 files to a folder: some web spaces show and upload no more at a time. */
const filePath = (kind: string, at: number) =>
  `${kind}/${Math.floor(at / 256).toString(36)}/${(at % 256).toString(36)}.json`;
