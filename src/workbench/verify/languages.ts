import type { Flow } from "../../guide/index.ts";
import { textsNeeded } from "../../guide/index.ts";
import { nearest } from "./nearest.ts";
import type { FileProblem } from "./problem.ts";
import type { Report } from "./report.ts";
import { valueAt } from "./shape.ts";
import type { ReadSource, Source } from "./source.ts";

/** The language that is complete; other varieties of it hold only where they differ. */
const complete = "en-GB";

/** The texts of every language as read from locales/. */
export type Languages = {
  tags: string[];
  sources: Map<string, Source>;
  problems: FileProblem[];
  /** The text or the texts under a key, those that the language leans on included. */
  lookUp(tag: string, key: string): unknown;
  /** The keys that a language file holds, each with its path in the file. */
  keysIn(file: string): { key: string; path: string[] }[];
  /** False where the file that would hold the key cannot be read. */
  isReadable(tag: string, key: string): boolean;
};

/** Reads every text file; `files` is keyed by path inside locales/, such as `en-GB/checks/reset.yaml`. */
export function readLanguages(files: Record<string, string>, read: ReadSource): Languages {
  const sources = new Map(Object.entries(files).map(([file, text]) => [file, read(file, text)]));
  const tags = [...new Set(Object.keys(files).map((file) => file.slice(0, file.indexOf("/"))))];
  const lookUp = (tag: string, key: string): unknown => {
    for (const [file, rest] of homesOf(tag, key)) {
      const found = valueAt(sources.get(file)?.data, rest);
      if (found !== undefined) return found;
    }
    return leansOnComplete(tag) ? lookUp(complete, key) : undefined;
  };
  return {
    tags,
    sources,
    problems: [...sources.values()].flatMap(({ problems }) => problems),
    lookUp,
    keysIn: (file) =>
      keysOf(
        sources.get(file)?.data,
        file
          .slice(file.indexOf("/") + 1)
          .replace(/\.yaml$/, "")
          .split("/"),
      ),
    isReadable: (tag, key) =>
      homesOf(tag, key).every(([file]) => !sources.get(file)?.problems.length) &&
      (!leansOnComplete(tag) ||
        homesOf(complete, key).every(([file]) => !sources.get(file)?.problems.length)),
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
    const near = nearest(parts.at(-1) ?? "", Object.keys(siblings ?? {}));
    const words = near ? ` Did you mean "${near}"?` : "";
    report(
      "missing-text",
      file,
      path,
      `There is no text "${key}" in ${tags.join(", ")}.${words}`,
      undefined,
      near ?? undefined,
    );
  }
  const others = languages.tags.filter((tag) => !leansOnComplete(tag) && tag !== complete);
  for (const file of languages.sources.keys()) {
    if (!file.startsWith(`${complete}/`)) continue;
    for (const { key, path } of languages.keysIn(file)) {
      const tags = called.has(key) ? [] : lacking(key, others);
      if (tags.length)
        report("missing-text", file, path, `There is no text "${key}" in ${tags.join(", ")}.`, "key");
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
