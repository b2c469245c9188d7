/** A stream of numbers in [0, 1), the same for the same seed (mulberry32). */
export type Chance = () => number;

/** A stream of its own for a text: what one thing draws does not move what another draws. */
export function chanceOf(text: string): Chance {
  let hash = 2166136261;
  for (let place = 0; place < text.length; place++) hash = Math.imul(hash ^ text.charCodeAt(place), 16777619);
  let state = hash >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** One of `from`, each as likely as its weight. */
export function pick<Item>(chance: Chance, from: readonly (readonly [Item, number])[]): Item {
  const total = from.reduce((sum, [, weight]) => sum + weight, 0);
  let rest = chance() * total;
  for (const [item, weight] of from) {
    rest -= weight;
    if (rest < 0) return item;
  }
  const last = from.at(-1);
  if (!last) throw new Error("Nothing to pick from");
  return last[0];
}

export const between = (chance: Chance, low: number, high: number) => low + chance() * (high - low);

/** A normal number (Box and Muller). */
export function normal(chance: Chance, mean: number, deviation: number): number {
  const radius = Math.sqrt(-2 * Math.log(1 - chance()));
  return mean + deviation * radius * Math.cos(2 * Math.PI * chance());
}
