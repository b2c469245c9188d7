import { closest, distance } from "fastest-levenshtein";

/**
 * The candidate that a typing slip most likely meant; null where none is near. Near is a third of the letters, at
 * least one and at most three: a judgement.
 */
export function nearest(typed: string, candidates: Iterable<string>): string | null {
  const others = [...candidates].filter((one) => one !== typed);
  if (!others.length) return null;
  const best = closest(typed, others);
  const most = Math.min(3, Math.max(1, Math.floor(typed.length / 3)));
  return distance(typed, best) <= most ? best : null;
}
