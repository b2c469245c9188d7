import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { assembleFlow, type Flow } from "../../../src/guide/index.ts";
import { ownFlows, readYamlFiles } from "../../../src/workbench/build/flows-folder.ts";
import { readSource } from "../../../src/workbench/build/yaml-source.ts";

const folder = (name: string) => fileURLToPath(new URL(name, import.meta.url));

/** Where the files lie that are the small flow's own; its limits, words, costs and regions are the project's. */
const smallFlowFolder = folder("flows");
/** Where its texts lie. */
export const smallTextsFolder = folder("locales");

/**
 * The files of a flow with one scenario, a gate of each kind and a check of each kind, by path. What holds of a flow as
 * such is tested with it: it is verified many times as fast as the whole of the project's.
 */
export function smallFlow(): Record<string, string> {
  const numbers = Object.entries(readYamlFiles(ownFlows)).filter(([file]) =>
    /^(limits|choosing|words|regions\/..)\.yaml$/.test(file),
  );
  return { ...Object.fromEntries(numbers), ...readYamlFiles(smallFlowFolder) };
}

/** The texts of the small flow, by path. */
export function smallTexts(): Record<string, string> {
  return readYamlFiles(smallTextsFolder);
}

/** Writes the small flow into a folder, for commands that read one. */
export function writeSmallFlow(out: string): void {
  for (const [file, text] of Object.entries(smallFlow())) {
    mkdirSync(dirname(join(out, file)), { recursive: true });
    writeFileSync(join(out, file), text);
  }
}

/** The small flow, put together. */
export function smallFlowOf(): Flow {
  const files = Object.entries(smallFlow()).map(([file, text]) => [file, readSource(file, text).data]);
  return assembleFlow(Object.fromEntries(files), "small");
}
