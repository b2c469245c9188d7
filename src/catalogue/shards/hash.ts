/**
 * A 32-bit hash of a text, the same wherever it is worked out: FNV-1a over UTF-16 units, then the finishing steps of
 * MurmurHash3 (fmix32 of smhasher; both public domain), because FNV alone leaves the low bits of similar codes similar.
 */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return finish(hash);
}

/** The finishing steps alone, for hashes that are worked out sign by sign elsewhere. */
export function finish(raw: number): number {
  let hash = raw;
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
