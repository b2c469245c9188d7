import { createShardedCatalogue, type Manifest } from "../../../src/catalogue/shards/index.ts";

/** A lookup with the texts of the files that it asks for. */
export type PhoneLookup = { typed: string; files: Record<string, string | null> };

/** ms for each lookup, and for reading its files as JSON alone. */
export type PhoneTimes = { lookups: number[]; floor: number[] };

/** Runs in the page. Files come out of memory: what the network takes is counted in bytes and requests. */
Object.assign(globalThis, {
  async measureLookups(manifest: Manifest, asked: PhoneLookup[]): Promise<PhoneTimes> {
    const times: PhoneTimes = { lookups: [], floor: [] };
    for (const { typed, files } of asked) {
      const catalogue = createShardedCatalogue(manifest, async (path) => parse(files[path]));
      const begun = performance.now();
      await catalogue.findModel(typed);
      times.lookups.push(performance.now() - begun);
      const read = performance.now();
      for (const text of Object.values(files)) parse(text);
      times.floor.push(performance.now() - read);
    }
    return times;
  },
  measureOpening(manifest: Manifest): number {
    const begun = performance.now();
    createShardedCatalogue(manifest, async () => null);
    return performance.now() - begun;
  },
});

const parse = (text: string | null | undefined): unknown => (text ? JSON.parse(text) : null);
