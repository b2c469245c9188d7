/**
 * The candidate that a typing slip most likely meant; null where none is near. Near is a third of the letters, at
 * least one and at most three: a judgement.
 */
export function nearest(typed: string, candidates: Iterable<string>): string | null {
  let best: string | null = null;
  let least = Math.min(3, Math.max(1, Math.floor(typed.length / 3))) + 1;
  for (const candidate of candidates) {
    const distance = editsBetween(typed, candidate);
    if (distance === 0 || distance >= least) continue;
    [best, least] = [candidate, distance];
  }
  return best;
}

/** Letters to put in, take out, change or swap with their neighbour: optimal string alignment (Damerau, 1964). */
export function editsBetween(from: string, to: string): number {
  let above: number[] = [];
  let row = Array.from({ length: to.length + 1 }, (_, at) => at);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      let edits = Math.min(at(row, j) + 1, at(next, j - 1) + 1, at(row, j - 1) + (same ? 0 : 1));
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1])
        edits = Math.min(edits, at(above, j - 2) + 1);
      next.push(edits);
    }
    [above, row] = [row, next];
  }
  return at(row, to.length);
}

const at = (row: number[], index: number) => row[index] ?? Number.POSITIVE_INFINITY;

/** The end of a message that offers a suggestion, and the field that holds it; both empty where there is none. */
export function offer(suggestion: string | null): { words: string; field: { suggestion?: string } } {
  return suggestion === null
    ? { words: "", field: {} }
    : { words: ` Did you mean "${suggestion}"?`, field: { suggestion } };
}
