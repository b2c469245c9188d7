import { readFileSync } from "node:fs";
import type { Plugin } from "vite";
import { applyEdits, entriesOf, findUnused, type Node, type Unused, unusedParts } from "./unused/index.ts";

/**
 * Leaves out of the libraries what this script never runs: a bundler cannot know which of a class's methods nobody
 * calls, nor which option nobody sets. Another version of a library than its list was made by stops the build, as does
 * an entry that the library does not have, so that nothing is left out of a version that nobody has looked at.
 * @param lists by the name of the package
 */
export function trimPlugin(lists: Record<string, Unused> = unusedParts): Plugin {
  const missing = new Map(Object.entries(lists).map(([name, unused]) => [name, new Set(entriesOf(unused))]));
  return {
    name: "fridgeside-trim",
    transform(code, path) {
      for (const [name, unused] of Object.entries(lists)) {
        const folder = `/node_modules/${name}/`;
        if (!path.includes(folder)) continue;
        const about = path.slice(0, path.lastIndexOf(folder) + folder.length);
        const { version } = JSON.parse(readFileSync(`${about}package.json`, "utf8"));
        if (version !== unused.version)
          this.error(`${name} is ${version} and its list is for ${unused.version}: ${lookThrough(name)}`);
        const edits = findUnused(code, this.parse(code) as unknown as Node, unused);
        for (const { entry } of edits) missing.get(name)?.delete(entry);
        return { code: applyEdits(code, edits), map: null };
      }
      return null;
    },
    buildEnd(problem) {
      if (problem) return;
      for (const [name, entries] of missing)
        if (entries.size > 0)
          this.error(`${name} has no ${[...entries].join(", no ")}: ${lookThrough(name)}`);
    },
  };
}

const lookThrough = (name: string) => `look through src/cli/unused/${name}.ts`;
