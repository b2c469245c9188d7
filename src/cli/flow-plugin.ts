import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { Plugin } from "vite";
import { slimFlow } from "../flow/index.ts";
import { verifyChart } from "../flow/verify/index.ts";
import { createFirstTurns, type Resource } from "../session/index.ts";
import { readFlow } from "./flows-folder.ts";
import { readLocales } from "./locales-folder.ts";

const ownDrawings = new URL("../ui/pictures/drawings.json", import.meta.url);

/**
 * Compiles flows/, locales/ and the drawings: the first question into the first file, all else into one data file for
 * each language beside the script, named by its content. A flow with a problem stops the build.
 */
export function flowPlugin(): Plugin {
  let modules: Record<string, string> = {};
  let files: Record<string, string> = {};
  return {
    name: "fridgeside-flow",
    buildStart() {
      ({ modules, files } = compile());
    },
    resolveId: (id) => (id.startsWith("virtual:") ? `\0${id}` : null),
    load: (id) => (id.startsWith("\0virtual:") ? (modules[id.slice("\0virtual:".length)] ?? null) : null),
    generateBundle() {
      for (const [fileName, source] of Object.entries(files))
        this.emitFile({ type: "asset", fileName, source });
    },
  };
}

function compile(): { modules: Record<string, string>; files: Record<string, string> } {
  const flow = readFlow();
  const problems = verifyChart(flow);
  if (problems.length > 0) throw new Error(problems.map((one) => one.message).join("\n"));
  const locales = readLocales();
  const files: Record<string, string> = {};
  const emit = (name: string, data: unknown) => {
    const source = JSON.stringify(data);
    const digest = createHash("sha256").update(source).digest("hex").slice(0, 8);
    const fileName = `parts/${name}-${digest}.json`;
    files[fileName] = source;
    return fileName;
  };
  const drawings = JSON.parse(readFileSync(ownDrawings, "utf8"));
  const dataFiles = Object.fromEntries(
    languagesOf(locales).map((tag) => {
      const resources = { [tag]: withFallback(locales["en-GB"] ?? {}, locales[tag] ?? {}) };
      return [tag, emit(tag, { flow: slimFlow(flow), resources, drawings })];
    }),
  );
  const modules = {
    "first-turns": `export default ${JSON.stringify(createFirstTurns(flow, locales))}`,
    // The addresses start from this very module, which is the first file, wherever a shop may host it.
    data: `export const dataFiles = ${JSON.stringify(dataFiles)};
export const dataAddress = (tag) => new URL(dataFiles[tag], import.meta.url).href;`,
  };
  return { modules, files };
}

/** The languages with texts; the first is the one that others lean on. */
function languagesOf(locales: Record<string, Resource>): string[] {
  return ["en-GB", ...Object.keys(locales).filter((tag) => tag !== "en-GB")];
}

/** A language's texts, with those of the other where it has none of its own: a phone fetches one set. */
function withFallback(fallback: Resource, own: Resource): Resource {
  const merged = Object.entries(fallback).map(([key, text]) => {
    const mine = own[key];
    if (typeof text === "string" || typeof mine === "string") return [key, mine ?? text];
    return [key, withFallback(text, mine ?? {})];
  });
  return { ...own, ...Object.fromEntries(merged) };
}
