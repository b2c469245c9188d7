import { bounds } from "../bounds.ts";

/**
 * Codes of one file of the index as one text: sorted, each as what it shares with the one before (in base 36) and the
 * rest. No normalised code has a blank in it, so blanks part them.
 */
export function writeNearby(keys: readonly string[]): string {
  let before = "";
  const cells = [...keys].sort().map((key) => {
    let shared = 0;
    while (shared < Math.min(key.length, 35) && key[shared] === before[shared]) shared++;
    before = key;
    return shared.toString(36) + key.slice(shared);
  });
  return JSON.stringify({ codes: cells.join(" ") });
}

/** The codes of a fetched file of the index; none where it is not one. Never throws. */
export function readNearby(json: unknown): string[] {
  const { codes } = Object(json) as Record<string, unknown>;
  if (typeof codes !== "string" || codes === "" || codes.length > bounds.nearbyText) return [];
  let before = "";
  return codes.split(" ").map((cell) => {
    before = before.slice(0, Number.parseInt(cell[0] ?? "", 36) || 0) + cell.slice(1);
    return before;
  });
}
