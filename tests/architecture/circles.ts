import { posix } from "node:path";
import { readImports } from "./read-imports.ts";
import type { SourceFile } from "./source-files.ts";

/**
 * Files that import each other in a circle, type-only and dynamic imports included: each circle sorted by path. These
 * are the strongly connected components of the graph (Tarjan 1972) with more than one file, or one that imports itself.
 */
export function findCircles(files: readonly SourceFile[]): string[][] {
  const paths = new Set(files.map(({ path }) => path));
  const imports = new Map(
    files.map(({ path, source }) => [
      path,
      readImports(source)
        .map(({ from }) => posix.join(posix.dirname(path), from.replace(/\?.*$/, "")))
        .filter((target) => paths.has(target)),
    ]),
  );
  const place = new Map<string, number>();
  const open: string[] = [];
  const circles: string[][] = [];

  function visit(path: string): number {
    const own = place.size;
    place.set(path, own);
    open.push(path);
    let least = own;
    for (const target of imports.get(path) ?? []) {
      if (!place.has(target)) least = Math.min(least, visit(target));
      else if (open.includes(target)) least = Math.min(least, place.get(target) ?? own);
    }
    if (least === own) {
      const circle = open.splice(open.indexOf(path));
      if (circle.length > 1 || imports.get(path)?.includes(path)) circles.push(circle.sort());
    }
    return least;
  }

  for (const path of paths) if (!place.has(path)) visit(path);
  return circles;
}
