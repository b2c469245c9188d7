import type { Features } from "../understanding/index.ts";

/** One sentence for training: its features and how much it counts, positive for what belongs, negative for what not. */
export type Example = { features: Features; weight: number };

/** How hard errors are punished; the usual figure for short texts, found on an outside data set's validation part. */
const COST = 1;
const ROUNDS = 12;
/** Sentences whose part has been settled are looked at again only every few rounds. */
const LOOK_AGAIN = 4;
const SETTLED = 0.05;

/**
 * A linear support vector machine with squared hinge loss, by dual coordinate descent (Hsieh et al., ICML 2008). Of the
 * same examples and chance it makes the same weights.
 * @param chance numbers from 0 up to 1
 */
export function trainLabel(
  examples: readonly Example[],
  buckets: number,
  chance: () => number,
  rounds = ROUNDS,
): { weights: Float64Array; bias: number } {
  const weights = new Float64Array(buckets);
  let bias = 0;
  const parts = new Float64Array(examples.length);
  const order = examples.map((_, place) => place);
  for (let round = 0; round < rounds; round++) {
    shuffle(order, chance);
    let largest = 0;
    for (const at of order) {
      const { features, weight } = examples[at] as Example;
      const part = parts[at] as number;
      if (weight === 0 || (part === 0 && round > 1 && round % LOOK_AGAIN)) continue;
      const side = Math.sign(weight);
      const slack = 1 / (2 * COST * Math.abs(weight));
      const gradient = side * (bias + along(weights, features)) - 1 + slack * part;
      if (part === 0 && gradient >= 0) continue;
      largest = Math.max(largest, Math.abs(gradient));
      // Features have length 1, and the bias counts as one more of weight 1.
      const next = Math.max(0, part - gradient / (2 + slack));
      const change = (next - part) * side;
      parts[at] = next;
      bias += change;
      const { ids, weights: amounts } = features;
      for (let place = 0; place < ids.length; place++) {
        const bucket = ids[place] as number;
        weights[bucket] = (weights[bucket] as number) + change * (amounts[place] as number);
      }
    }
    if (round > 0 && round % LOOK_AGAIN === 0 && largest < SETTLED) break;
  }
  return { weights, bias };
}

function along(weights: Float64Array, { ids, weights: amounts }: Features): number {
  let sum = 0;
  for (let place = 0; place < ids.length; place++)
    sum += (weights[ids[place] as number] as number) * (amounts[place] as number);
  return sum;
}

function shuffle(order: number[], chance: () => number): void {
  for (let last = order.length - 1; last > 0; last--) {
    const other = Math.floor(chance() * (last + 1));
    [order[last], order[other]] = [order[other] as number, order[last] as number];
  }
}

/** Chance that is the same every time: a linear congruential generator (Numerical Recipes, 1992, §7.1). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
