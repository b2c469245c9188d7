import { bundleEmbed } from "../src/workbench/build/build.ts";
import type { BuiltFile } from "../src/workbench/build/chunks.ts";
import { openKept, sources } from "./kept-once.ts";

/**
 * What a shop embeds, as the build gives it, made once for all tests of the same sources: unit tests and browser tests
 * take it from `.cache/built`.
 */
export async function builtOnce(): Promise<BuiltFile[]> {
  const { read, keep } = openKept("built", sources);
  const entries = read<[string, string, string?][]>("embed");
  if (entries)
    return entries.map(([path, text, map = ""]) => ({ path, content: Buffer.from(text, "base64"), map }));
  const files = await bundleEmbed();
  keep(
    "embed",
    files.map(({ path, content, map }) => [path, Buffer.from(content).toString("base64"), map]),
  );
  return files;
}
