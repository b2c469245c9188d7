import { existsSync } from "node:fs";
import { join } from "node:path";
import { demoCodes } from "../../../demo/generate/feed/index.ts";
import { keyOf } from "../../catalogue/slips.ts";
import { type Accuracy, emptyAccuracy, note } from "./accuracy.ts";
import { type Built, type Lookup, lookUp } from "./lookups.ts";
import { sampleOf, type Typed, typedRightly, typedWrongly } from "./sample.ts";
import { type createScales, forEachOf, sum, type Weight } from "./weight.ts";

/** Codes that are looked up, and how many of these lookups are weighed: the best brotli takes long. */
const lookups = 10_000;
const weighedLookups = 1000;

/** Lookups of one kind: how many requests in all, side by side and one after the other, and what some weigh. */
export type Traffic = { requests: number[]; widest: number[]; rounds: number[]; weights: Weight[] };

export type Measured = { accuracy: Accuracy; exact: Traffic; slipped: Traffic };

/** Looks up a sample of the codes of a feed in its built catalogue, as they are and with a slip in each. */
export async function measureLookups(
  built: Built,
  feed: { models: number; seed: number; dense: boolean },
  weigh: ReturnType<typeof createScales>,
): Promise<Measured> {
  const codes = [...demoCodes(feed)];
  const keys = new Set(codes.map(keyOf));
  const sample = sampleOf(codes, lookups, feed.seed);
  const accuracy = emptyAccuracy();

  async function run(asked: Typed[], isCounted: (lookup: Lookup) => boolean): Promise<Traffic> {
    const traffic: Traffic = { requests: [], widest: [], rounds: [], weights: [] };
    const paths: string[][] = [];
    for (const typed of asked) {
      const lookup = await lookUp(built, typed.typed);
      note(accuracy, typed, lookup, (key) => keys.has(key));
      if (!isCounted(lookup)) continue;
      traffic.requests.push(lookup.files.length);
      traffic.widest.push(lookup.widest);
      traffic.rounds.push(lookup.rounds);
      paths.push(lookup.files.map(({ path }) => join(built.files, path)));
    }
    const some = sampleOf(paths, Math.min(paths.length, weighedLookups), feed.seed);
    traffic.weights = await forEachOf(some, async (files) => {
      const weights = await Promise.all(files.filter((file) => existsSync(file)).map(weigh));
      const total = (kind: keyof Weight) => sum(weights.map((weight) => weight[kind]));
      return { raw: total("raw"), quick: total("quick"), best: total("best") };
    });
    return traffic;
  }

  const exact = await run(typedRightly(sample, feed.seed), ({ result }) => result.kind === "exact");
  const slipped = await run(typedWrongly(sample, feed.seed), () => true);
  return { accuracy, exact, slipped };
}
