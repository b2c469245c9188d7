import { type Flow, textsNeeded } from "../../guide/index.ts";
import type { Report } from "./report.ts";
import { valueAt } from "./shape.ts";
import type { Source } from "./source.ts";
import { nearest } from "./suggest.ts";

/** The language that is complete; other varieties of it hold only where they differ. */
const complete = "en-GB";

/** The texts of every language as read from locales/. */
export type Languages = {
  tags: string[];
  files: string[];
  /** The text or the texts under a key, those that the language leans on included. */
  lookUp(tag: string, key: string): unknown;
  /** The keys that a language file holds, each with its path in the file. */
  keysIn(file: string): { key: string; path: string[] }[];
  /** False where the file that would hold the key cannot be read. */
  isReadable(tag: string, key: string): boolean;
};

/** The texts of some files by path inside locales/, such as `en-GB/checks/reset.yaml`; reports those without a form. */
export function judgeTexts(files: string[], sources: Map<string, Source>, report: Report): Languages {
  for (const file of files)
    for (const one of sources.get(file)?.problems ?? []) report({ ...one, path: [] }, one);
  const isWhole = ([file]: [string, string[]]) => !sources.get(file)?.problems.length;
  const lookUp = (tag: string, key: string): unknown => {
    for (const [file, rest] of homesOf(tag, key)) {
      const found = valueAt(sources.get(file)?.data, rest);
      if (found !== undefined) return found;
    }
    return leansOnComplete(tag) ? lookUp(complete, key) : undefined;
  };
  return {
    tags: [...new Set(files.map((file) => file.slice(0, file.indexOf("/"))))],
    files,
    lookUp,
    keysIn: (file) => {
      const [, ...within] = file.replace(/\.yaml$/, "").split("/");
      return keysOf(sources.get(file)?.data, within);
    },
    isReadable: (tag, key) =>
      homesOf(tag, key).every(isWhole) && (!leansOnComplete(tag) || homesOf(complete, key).every(isWhole)),
  };
}

/** Texts that the flow calls for, or that the complete language has, and that some language lacks. */
export function findUntold(flow: Flow | null, languages: Languages, report: Report): void {
  const lacking = (key: string, tags: string[]) =>
    tags.filter((tag) => languages.isReadable(tag, key) && !isText(languages.lookUp(tag, key)));
  const called = new Set<string>();
  for (const { key, file, path } of flow ? textsNeeded(flow) : []) {
    called.add(key);
    const tags = lacking(key, languages.tags);
    if (!tags.length) continue;
    const parts = key.split(".");
    const siblings = languages.lookUp(tags[0] ?? complete, parts.slice(0, -1).join("."));
    const suggestion = nearest(parts.at(-1) ?? "", Object.keys(siblings ?? {}));
    report({ code: "missing-text", file, path, key, tags, suggestion });
  }
  const others = languages.tags.filter((tag) => !leansOnComplete(tag) && tag !== complete);
  for (const file of languages.files) {
    // Phrases are no texts: a language that has none is read by those of the complete one.
    if (!file.startsWith(`${complete}/`) || file.startsWith(`${complete}/phrases/`)) continue;
    for (const { key, path } of languages.keysIn(file)) {
      const tags = called.has(key) ? [] : lacking(key, others);
      if (tags.length) report({ code: "missing-text", file, path, at: "key", key, tags });
    }
  }
}

const leansOnComplete = (tag: string) => tag !== complete && tag.split("-")[0] === complete.split("-")[0];
const isText = (value: unknown) => typeof value === "string" && value.trim() !== "";

/** The files that may hold a key, each with the rest of the key: `checks.reset.name` may lie in checks/reset.yaml. */
function homesOf(tag: string, key: string): [file: string, rest: string[]][] {
  const parts = key.split(".");
  return parts.map((_, at) => [`${[tag, ...parts.slice(0, at + 1)].join("/")}.yaml`, parts.slice(at + 1)]);
}

function keysOf(data: unknown, prefix: string[], path: string[] = []): { key: string; path: string[] }[] {
  if (typeof data === "string") return [{ key: [...prefix, ...path].join("."), path }];
  return Object.entries(data ?? {}).flatMap(([id, value]) => keysOf(value, prefix, [...path, id]));
}
