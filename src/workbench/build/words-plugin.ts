import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";
import { createWordsData, type WordsData, withOwnLines } from "../../training/index.ts";
import type { Resource } from "../../turn/index.ts";
import { readLocales, readPhrases } from "./locales-folder.ts";
import { languagesOf, withFallback } from "./panel-data.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));
/** Training takes seconds, and its data changes seldom: what was trained of the same is taken from here. */
const keptFolder = `${root}.cache/words`;
/** All that a model depends on besides phrases and texts. */
const trainers = ["src/training", "src/understanding"];

/** Trains every language's model and writes it beside the script, named by its content. */
export function wordsPlugin(): Plugin {
  const files = new Map<string, string>();
  let module = "";
  return {
    name: "fridgeside-words",
    buildStart() {
      const addresses = Object.entries(createAllWords()).map(([tag, data]) => {
        const source = JSON.stringify(data);
        const file = `words-${tag}-${digestOf(source).slice(0, 8)}.json`;
        files.set(`parts/${file}`, source);
        return [tag, file];
      });
      // From the place of the script that asks, beside which they lie.
      module = `const files = ${JSON.stringify(Object.fromEntries(addresses))};
export const wordsAddress = (tag) => new URL("./" + files[tag], import.meta.url).href;`;
    },
    resolveId: (id) => (id === "virtual:words" ? `\0${id}` : null),
    load: (id) => (id === "\0virtual:words" ? module : null),
    generateBundle() {
      for (const [fileName, source] of files) this.emitFile({ type: "asset", fileName, source });
    },
  };
}

/** Every language's words. A language without phrases is read by those of en-GB; one of the same tongue adds to them. */
export function createAllWords(): Record<string, WordsData> {
  const locales = readLocales();
  const phrases = readPhrases();
  const shared = phrases["en-GB"] ?? {};
  const code = trainers.map(sourceOf).join();
  return Object.fromEntries(
    languagesOf(locales).map((tag) => {
      const isSame = tag.split("-")[0] === "en";
      const own = tag === "en-GB" ? {} : phrases[tag];
      const said = isSame || !own ? withOwnLines(shared, own) : own;
      const texts = withFallback(locales["en-GB"] ?? {}, locales[tag] ?? {});
      return [tag, keptOr(said, texts, code)];
    }),
  );
}

function keptOr(phrases: Resource, { asides = {}, checks = {} }: Resource, code: string): WordsData {
  const texts = { asides, checks };
  const file = join(keptFolder, `${digestOf(JSON.stringify([phrases, texts, code]))}.json`);
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    const data = createWordsData(phrases, texts);
    mkdirSync(keptFolder, { recursive: true });
    writeFileSync(file, JSON.stringify(data));
    return data;
  }
}

function sourceOf(folder: string): string {
  return readdirSync(root + folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .sort()
    .map((name) => readFileSync(join(root, folder, name), "utf8"))
    .join();
}

const digestOf = (source: string) => createHash("sha256").update(source).digest("hex");
