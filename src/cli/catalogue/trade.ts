import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { fileSchemas } from "../../guide/index.ts";

/** What a flows folder says that a catalogue needs: kinds of parts, and how many pieces count as few. */
export type Trade = { kinds: string[]; few: number };

/** Reads the two files alone; a whole flow takes longer than a small feed. @throws Error where they do not fit. */
export function readTrade(folder: string): Trade {
  const read = (file: string): unknown =>
    parse(readFileSync(join(folder, file), "utf8"), { strict: true, uniqueKeys: true });
  const limits = fileSchemas.limits.parse(read("limits.yaml"));
  const few = limits["few-in-stock"]?.value;
  if (few === undefined) throw new Error(`${join(folder, "limits.yaml")} has no limit "few-in-stock"`);
  return { kinds: Object.keys(fileSchemas.parts.parse(read("parts.yaml"))), few };
}
