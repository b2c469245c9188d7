import { hashText } from "./hash.ts";

/*
 * Which shard holds a code: a binary tree over the bits of two hashes, first that of the code's first signs, then that
 * of all of it. Models of a series begin alike and take the same parts, so they lie together and their parts are
 * written once. A shard that would be too large is halved by one more bit, so that none is; a plain remainder of a hash
 * would leave some shards three times as full as the middle one (Poisson). The shape is all that a phone must know:
 * two bits for each shard.
 */

/** Signs that models of one series mostly share (judgement). */
const stemLength = 6;
const stemBits = 24;
const allBits = 2 * stemBits;

const stemOf = (fold: string) => hashText(fold.slice(0, stemLength));

/** The bit of one of the two hashes of a folded code that leads on from a fork at this depth. */
const bitAt = (depth: number, stem: number, whole: number) =>
  ((depth < stemBits ? stem : whole) >>> (31 - (depth % stemBits))) & 1;

// Six bits to a sign; none of these needs escaping in JSON.
const signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/**
 * Spreads codes over shards.
 * @param isSmall whether a shard may hold these places of `folds`
 * @returns the places of each shard, and the tree as text: its nodes from the root on, left before right, 1 for a fork
 */
export function growTree(
  folds: readonly string[],
  isSmall: (places: Uint32Array) => boolean,
): { tree: string; leaves: Uint32Array[] } {
  const stems = Uint32Array.from(folds, stemOf);
  const wholes = Uint32Array.from(folds, hashText);
  const leaves: Uint32Array[] = [];
  const nodes: number[] = [];
  const open = [{ places: Uint32Array.from(folds, (_, place) => place), depth: 0 }];
  for (let next = open.pop(); next; next = open.pop()) {
    const { places, depth } = next;
    // One code alone cannot be spread, however much there is for it.
    if (depth === allBits || places.length < 2 || isSmall(places)) {
      nodes.push(0);
      leaves.push(places);
      continue;
    }
    nodes.push(1);
    const goesRight = (place: number) => bitAt(depth, stems[place] ?? 0, wholes[place] ?? 0) === 1;
    open.push({ places: places.filter(goesRight), depth: depth + 1 });
    open.push({ places: places.filter((place) => !goesRight(place)), depth: depth + 1 });
  }
  let tree = "";
  for (let at = 0; at < nodes.length; at += 6) {
    let sign = 0;
    for (let bit = 0; bit < 6; bit++) sign = sign * 2 + (nodes[at + bit] ?? 0);
    tree += signs[sign];
  }
  return { tree, leaves };
}

/**
 * Reads a tree back. A text that is none gives shards that hold nothing, which is found when they are asked.
 * @returns the number of the shard of a folded code
 */
export function readTree(tree: string): (fold: string) => number {
  const isFork = (node: number) =>
    ((signs.indexOf(tree[Math.floor(node / 6)] ?? "A") >>> (5 - (node % 6))) & 1) === 1;
  // Where the right branch of each fork begins, and the number of each leaf.
  const target: number[] = [];
  const forks: number[] = [];
  let leaf = 0;
  for (let node = 0; node < tree.length * 6; node++) {
    if (isFork(node)) {
      forks.push(node);
      continue;
    }
    target[node] = leaf++;
    const fork = forks.pop();
    if (fork === undefined) break;
    target[fork] = node + 1;
  }
  return (fold) => {
    const [stem, whole] = [stemOf(fold), hashText(fold)];
    let node = 0;
    for (let depth = 0; depth < allBits && isFork(node); depth++)
      node = bitAt(depth, stem, whole) ? (target[node] ?? 0) : node + 1;
    return target[node] ?? 0;
  };
}
