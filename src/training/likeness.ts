import type { Features } from "../understanding/index.ts";

/** A sentence and what it is an example of. */
export type Labelled = { label: string; features: Features };

/** By bucket, the sentences that have it, with its weight there: two numbers each. */
export type Index = Map<number, number[]>;

/** Which sentences have what in common. */
export function indexOf(all: readonly Labelled[]): Index {
  const index: Index = new Map();
  for (const [sentence, { features }] of all.entries())
    for (const [place, id] of features.ids.entries()) {
      const list = index.get(id) ?? [];
      list.push(sentence, features.weights[place] as number);
      index.set(id, list);
    }
  return index;
}

/** By sentence, the cosine with the likest of a label's own. */
export function likenessTo(label: string, all: readonly Labelled[], index: Index): Float64Array {
  const most = new Float64Array(all.length);
  for (const own of all) {
    if (own.label !== label) continue;
    const sums = new Float64Array(all.length);
    for (const [place, id] of own.features.ids.entries()) {
      const list = index.get(id) ?? [];
      const weight = own.features.weights[place] as number;
      for (let at = 0; at < list.length; at += 2)
        sums[list[at] as number] = (sums[list[at] as number] as number) + weight * (list[at + 1] as number);
    }
    for (let at = 0; at < sums.length; at++)
      if ((sums[at] as number) > (most[at] as number)) most[at] = sums[at] as number;
  }
  return most;
}
