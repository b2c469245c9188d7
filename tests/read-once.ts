import { readSource } from "../src/workbench/build/yaml-source.ts";
import type { Source } from "../src/workbench/verify/index.ts";

const known = new Map<string, Source>();

/** Reads a file's text as `readSource` does, once for all files of tests that a worker runs. */
export function readOnce(file: string, text: string): Source {
  const key = `${file}\n${text}`;
  const source = known.get(key) ?? readSource(file, text);
  known.set(key, source);
  return source;
}
