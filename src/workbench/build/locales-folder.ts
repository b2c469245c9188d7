import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import type { Resource } from "../../turn/index.ts";

/** The project's own texts. */
export const ownLocales = join(import.meta.dirname, "../../../locales/");

/** Every language's texts: a folder each; the names of folders and files are the first parts of their keys. */
export function readLocales(folder: string = ownLocales): Record<string, Resource> {
  return Object.fromEntries(readdirSync(folder).map((tag) => [tag, readTexts(join(folder, tag))]));
}

function readTexts(folder: string): Resource {
  return Object.fromEntries(
    readdirSync(folder, { withFileTypes: true })
      .sort((a, b) => a.name.localeCompare(b.name))
      .map((entry) => {
        const path = join(folder, entry.name);
        if (entry.isDirectory()) return [entry.name, readTexts(path)];
        return [
          entry.name.replace(/\.yaml$/, ""),
          parse(readFileSync(path, "utf8"), { uniqueKeys: true }) ?? {},
        ];
      }),
  );
}
