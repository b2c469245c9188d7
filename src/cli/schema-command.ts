import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import * as z from "zod/mini";
import { type FileKind, fileSchemas } from "../guide/index.ts";
import { ownFlows } from "../workbench/build/index.ts";

/** Where the schemas lie, beside the files they describe: an editor finds them by the first line of each file. */
export const schemaFolder = join(ownFlows, "schema");

/** The JSON Schema of each kind of file in flows/, by kind. Draft 7: what editors know best. */
export function createSchemas(): Record<string, object> {
  return Object.fromEntries(
    Object.entries(fileSchemas).map(([kind, schema]) => [
      kind,
      z.toJSONSchema(schema, { target: "draft-7" }),
    ]),
  );
}

/** Writes every schema into `folder`, one file a kind. @throws Error where the folder cannot be written. */
export function writeSchemas(folder: string = schemaFolder): void {
  mkdirSync(folder, { recursive: true });
  for (const [kind, schema] of Object.entries(createSchemas()))
    writeFileSync(join(folder, `${kind}.json`), schemaText(schema));
}

/** A schema as the file has it: indented, short lists of words on one line, as the formatter wants it. */
export function schemaText(schema: object): string {
  const text = JSON.stringify(schema, null, 2).replace(/\[\n([^[\]{}]*?)\n *\]/g, (list, items: string) => {
    const line = `[${items.trim().replace(/\n */g, " ")}]`;
    return line.length <= longestList ? line : list;
  });
  return `${text}\n`;
}

/** Every list in our schemas fits well within the formatter's line. */
const longestList = 80;

/** The first line by which an editor finds the schema of a flows file; `path` is relative to flows/. */
export function schemaLine(path: string, kind: FileKind): string {
  return `# yaml-language-server: $schema=${"../".repeat(path.split("/").length - 1)}schema/${kind}.json`;
}
