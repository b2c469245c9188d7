import { isOneSlip } from "../../catalogue/index.ts";
import { finish } from "../../catalogue/shards/index.ts";

/**
 * Which codes have another one slip away: 1 for each of them. Codes that one slip makes of each other share themselves
 * or themselves without one sign (deletion neighbourhood; Bocek, Hunt and Stiller 2007, report ifi-2007.02), so only those that share one are held
 * against each other. Such codes are never taken silently, whatever was typed.
 * @param folds folded codes
 * @param inPass codes in one pass over the table; more need more memory at once
 */
export function findCrowded(folds: readonly string[], inPass = 250_000): Uint8Array {
  const crowded = new Uint8Array(folds.length);
  const passes = Math.max(1, Math.ceil(folds.length / inPass));
  const mean = folds.reduce((sum, fold) => sum + fold.length + 1, 0) / passes;
  const slots = 2 ** Math.ceil(Math.log2(mean * 1.8 + 16));
  const tags = new Uint32Array(slots);
  const owners = new Uint32Array(slots);
  for (let pass = 0; pass < passes; pass++) {
    owners.fill(0);
    for (const [at, fold] of folds.entries()) {
      for (let left = -1; left < fold.length; left++) {
        // Leaving out either of two like neighbours gives the same.
        if (left > 0 && fold[left] === fold[left - 1]) continue;
        const [place, tag] = hashWithout(fold, left);
        if (place % passes === pass) enter(at, Math.floor(place / passes), tag);
      }
    }
  }
  return crowded;

  /** Holds a code against all that share this with it, then enters it behind them. */
  function enter(at: number, place: number, tag: number): void {
    let slot = place & (slots - 1);
    for (; owners[slot]; slot = (slot + 1) & (slots - 1)) {
      if (tags[slot] !== tag) continue;
      const owner = (owners[slot] as number) - 1;
      if (crowded[owner] && crowded[at]) continue;
      if (isOneSlip(folds[owner] as string, folds[at] as string)) crowded[owner] = crowded[at] = 1;
    }
    owners[slot] = at + 1;
    tags[slot] = tag;
  }
}

/** Two independent hashes of a text without the sign at `left`. */
function hashWithout(text: string, left: number): [number, number] {
  let one = 0x811c9dc5;
  let other = 0x01234567;
  for (let at = 0; at < text.length; at++) {
    if (at === left) continue;
    const unit = text.charCodeAt(at);
    one = Math.imul(one ^ unit, 0x01000193);
    other = Math.imul(other ^ unit, 0x5bd1e995) + 0x52dce729;
  }
  return [finish(one), finish(other)];
}
