import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { assembleFlow, type Flow, fileKind, fileSchemas } from "../../guide/index.ts";
import { type Shares, withShares } from "./shares-overlay.ts";

/** The project's own flows. */
export const ownFlows = join(import.meta.dirname, "../../../flows/");

/** Every YAML file below a folder, by path, as text. @throws Error where the folder cannot be read. */
export function readYamlFiles(folder: string): Record<string, string> {
  const paths = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((path) =>
    path.endsWith(".yaml"),
  );
  return Object.fromEntries(paths.sort().map((path) => [path, readFileSync(join(folder, path), "utf8")]));
}

/**
 * Reads a flows folder that has passed the verifier.
 * @param shares of causes, in place of the folder's own
 * @throws Error naming the first file that does not fit
 */
export function readFlow(folder: string = ownFlows, shares: Shares = {}): Flow {
  const texts = withShares(readYamlFiles(folder), shares);
  const files: Record<string, unknown> = {};
  for (const [path, text] of Object.entries(texts)) {
    const kind = fileKind(path);
    if (!kind) throw new Error(`flows/${path} is no file that a flow has`);
    const data = parse(text, { strict: true, uniqueKeys: true });
    const checked = fileSchemas[kind].safeParse(data);
    if (!checked.success) throw new Error(`flows/${path}: ${JSON.stringify(checked.error.issues)}`);
    files[path] = data;
  }
  return assembleFlow(files, versionOf(texts));
}

/** A short digest of the files: changes with every edit, equal on every machine. */
export function versionOf(texts: Record<string, string>): string {
  const digest = createHash("sha256");
  for (const [path, text] of Object.entries(texts))
    digest.update(path).update("\0").update(text).update("\0");
  return digest.digest("hex").slice(0, 10);
}
