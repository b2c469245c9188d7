/** Places 0 to `count` by their group, without an object for each: a counting sort. */
export function groupBy(count: number, groups: number, groupOf: (place: number) => number) {
  const starts = new Uint32Array(groups + 1);
  const group = Uint32Array.from({ length: count }, (_, place) => groupOf(place));
  for (const each of group) starts[each + 1] = (starts[each + 1] ?? 0) + 1;
  for (let each = 0; each < groups; each++) starts[each + 1] = (starts[each + 1] ?? 0) + (starts[each] ?? 0);
  const next = starts.slice();
  const sorted = new Uint32Array(count);
  for (let place = 0; place < count; place++) {
    const at = group[place] as number;
    sorted[next[at] as number] = place;
    next[at] = (next[at] as number) + 1;
  }
  return (each: number) => sorted.subarray(starts[each], starts[each + 1]);
}
