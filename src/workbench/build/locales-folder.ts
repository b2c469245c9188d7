import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import type { Resource } from "../../turn/index.ts";

/** The project's own texts. */
export const ownLocales = join(import.meta.dirname, "../../../locales/");

/** What typed sentences are understood by lies in a folder of its own in each language: no panel shows it. */
const phrasesFolder = "phrases";

/** Every language's phrases, those of languages without any left out. */
export function readPhrases(folder: string = ownLocales): Record<string, Resource> {
  return Object.fromEntries(
    readdirSync(folder)
      .map((tag) => [tag, join(folder, tag, phrasesFolder)] as const)
      .filter(([, path]) => existsSync(path))
      .map(([tag, path]) => [tag, readTexts(path)]),
  );
}

/** Every language's texts: a folder each; the names of folders and files are the first parts of their keys. */
export function readLocales(folder: string = ownLocales): Record<string, Resource> {
  return Object.fromEntries(readdirSync(folder).map((tag) => [tag, readTexts(join(folder, tag))]));
}

function readTexts(folder: string): Resource {
  return Object.fromEntries(
    readdirSync(folder, { withFileTypes: true })
      .filter(({ name }) => name !== phrasesFolder)
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
