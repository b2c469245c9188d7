import type { Collected } from "./finish.ts";

/** For each kind of part, for how many models the feed has none. */
export function countMissingKinds(
  { models, parts, offsets, partOf }: Collected,
  kinds: readonly string[],
): Record<string, number> {
  const kindOf = Int32Array.from(parts, ({ kind }) => kinds.indexOf(kind));
  const having = new Uint32Array(kinds.length);
  const seenFor = new Uint32Array(kinds.length);
  for (let model = 0; model < models.length; model++) {
    for (let fitment = offsets[model] ?? 0; fitment < (offsets[model + 1] ?? 0); fitment++) {
      const kind = kindOf[partOf[fitment] ?? 0] ?? -1;
      if (kind < 0 || seenFor[kind] === model + 1) continue;
      seenFor[kind] = model + 1;
      having[kind] = (having[kind] ?? 0) + 1;
    }
  }
  return Object.fromEntries(kinds.map((kind, at) => [kind, models.length - (having[at] ?? 0)]));
}
