/**
 * A key that stands twice in the same JSON object, or null. RFC 8259, 4: what a reader makes of it is unpredictable.
 * @param source an object that `JSON.parse` takes
 * @param count how many keys `JSON.parse` found in it
 */
export function findDoubledKey(source: string, count: number): string | null {
  // Every key brings one of these, and some texts do, too; as many as keys means none was lost.
  if ((source.match(/"\s*:/g)?.length ?? 0) <= count) return null;
  const keys = new Set<string>();
  let depth = 0;
  for (const [token] of source.matchAll(/"(?:[^"\\]|\\.)*"(?:\s*:)?|[{}[\]]/g)) {
    if (token === "{" || token === "[") depth++;
    else if (token === "}" || token === "]") depth--;
    else if (depth === 1 && token.endsWith(":")) {
      const key: string = JSON.parse(token.slice(0, -1).trimEnd());
      if (keys.has(key)) return key;
      keys.add(key);
    }
  }
  return null;
}
