import { createHash } from "node:crypto";
import type { Plugin } from "vite";
import { slimFlow } from "../flow/index.ts";
import { verifyChart } from "../flow/verify/index.ts";
import { createFirstTurns, type Resource } from "../session/index.ts";
import { readFlow } from "./flows-folder.ts";
import { readLocales } from "./locales-folder.ts";

/**
 * Compiles flows/ and locales/: the first question into the first file, all else into data files beside the
 * script, named by their content. A flow with a problem stops the build.
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
  const flowFile = emit("flow", slimFlow(flow));
  const textFiles = Object.fromEntries(
    languagesOf(locales).map((tag) => [tag, emit(`texts-${tag}`, textsFor(tag, locales))]),
  );
  const modules = {
    "first-turns": `export default ${JSON.stringify(createFirstTurns(flow, locales))}`,
    // The addresses start from this very module, which is the first file, wherever a shop may host it.
    data: `const at = (name) => new URL(name, import.meta.url).href;
export const flowAddress = () => at(${JSON.stringify(flowFile)});
export const textFiles = ${JSON.stringify(textFiles)};
export const textsAddress = (tag) => at(textFiles[tag]);`,
  };
  return { modules, files };
}

/** The languages with texts; the first is the one that others lean on. */
function languagesOf(locales: Record<string, Resource>): string[] {
  return ["en-GB", ...Object.keys(locales).filter((tag) => tag !== "en-GB")];
}

function textsFor(tag: string, locales: Record<string, Resource>): Record<string, Resource> {
  return Object.fromEntries([...new Set([tag, "en-GB"])].map((one) => [one, locales[one] ?? {}]));
}
