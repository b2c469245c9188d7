import { createShardedCatalogue, parseManifest } from "../catalogue/shards/index.ts";
import type { Complain } from "./complain.ts";
import { sentenceOf } from "./row-complaints.ts";

/**
 * A catalogue of many files, by its manifest as it was fetched.
 * @param address where the manifest lies; its folder is named from there
 * @param read fetches a file as JSON
 * @throws Error "unusable" for what is no manifest
 */
export function openManyFiles(
  json: unknown,
  address: string,
  read: (file: string) => Promise<unknown>,
  complain: Complain,
) {
  const manifest = parseManifest(json);
  if (!manifest) {
    complain(`the catalogue ${address} is not what "fridgeside catalogue build" writes.`);
    throw new Error("unusable");
  }
  const folder = new URL(`${manifest.folder}/`, address);
  return createShardedCatalogue(
    manifest,
    (path) => read(new URL(path, folder).href),
    (problem) => complain(sentenceOf("catalogue", problem)),
  );
}
