import type { Features } from "../understanding/index.ts";

/** A sentence and what it is an example of. */
export type Labelled = { label: string; features: Features };

/** By bucket, the sentences that have it, and its weight in each. */
export type Index = Map<number, { sentences: Int32Array; weights: Float32Array }>;

/** Which sentences have what in common. */
export function indexOf(all: readonly Labelled[]): Index {
  const lists = new Map<number, [sentence: number, weight: number][]>();
  for (const [sentence, { features }] of all.entries())
    for (const [place, id] of features.ids.entries()) {
      const list = lists.get(id) ?? [];
      list.push([sentence, features.weights[place] as number]);
      lists.set(id, list);
    }
  return new Map(
    [...lists].map(([id, list]) => [
      id,
      {
        sentences: Int32Array.from(list, ([sentence]) => sentence),
        weights: Float32Array.from(list, ([, weight]) => weight),
      },
    ]),
  );
}

/** So many of a label's own show well enough what is like them. */
const ENOUGH = 40;

/** By sentence, the cosine with the likest of a label's own. */
export function likenessTo(label: string, all: readonly Labelled[], index: Index): Float32Array {
  const most = new Float32Array(all.length);
  const sums = new Float32Array(all.length);
  const own = all.filter((one) => one.label === label);
  const few = own.filter((_, at) => at % Math.ceil(own.length / ENOUGH) === 0);
  for (const { features } of few) {
    sums.fill(0);
    for (const [place, id] of features.ids.entries()) {
      const list = index.get(id);
      if (!list) continue;
      const { sentences, weights } = list;
      const weight = features.weights[place] as number;
      for (let at = 0; at < sentences.length; at++) {
        const sentence = sentences[at] as number;
        sums[sentence] = (sums[sentence] as number) + weight * (weights[at] as number);
      }
    }
    for (let at = 0; at < sums.length; at++)
      if ((sums[at] as number) > (most[at] as number)) most[at] = sums[at] as number;
  }
  return most;
}
