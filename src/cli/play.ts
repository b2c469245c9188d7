import { existsSync, readFileSync } from "node:fs";
import type { Readable } from "node:stream";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { parseCatalogue } from "../catalogue/index.ts";
import { readFlow, readLocales } from "../workbench/build/index.ts";
import {
  createConversations,
  createOpening,
  type PlayOptions,
  type Wishes,
} from "../workbench/play/index.ts";
import { longestLine, readLines } from "./play-lines.ts";

const demoCatalogue = fileURLToPath(new URL("../../demo/catalogue.json", import.meta.url));

/**
 * `npm run play`: a session without a screen. Prints each turn as one JSON line and reads each answer as one; a line
 * `{"begin":{…}}` starts another conversation in the same process, which then goes on until its input ends.
 * @returns exit code 0 when an ending was reached, 1 when the answers ran out before, 2 for unusable options
 */
export async function playCommand(args: string[], input: Readable = process.stdin): Promise<number> {
  const { catalogue: file = demoCatalogue, ...wishes } = readArguments(args);
  const open = openingOf(file, wishes);
  const options = open({});
  if (typeof options === "string") {
    console.error(options);
    return 2;
  }
  const play = createConversations(options, open);
  console.log(JSON.stringify(play.first));
  for await (const line of readLines(input)) {
    if (line?.trim() === "") continue;
    const said = line === null ? { error: `A line has at most ${longestLine} characters.` } : play.take(line);
    console.log(JSON.stringify(said));
    if (play.isOver() && !play.hasBegun()) return 0;
  }
  return play.isOver() ? 0 : 1;
}

function readArguments(args: string[]) {
  const text = { type: "string" } as const;
  const options = { scenario: text, locale: text, model: text, now: text, catalogue: text };
  return parseArgs({ args, options: { ...options, variant: text, serial: text } }).values;
}

function openingOf(file: string, asked: Wishes): (wishes: Wishes) => PlayOptions | string {
  if (!existsSync(file)) return () => `--catalogue: there is no file "${file}"`;
  const json = readJson(file);
  if (json === undefined) return () => `--catalogue: "${file}" is no JSON`;
  const { catalogue } = parseCatalogue(json);
  const data = { flow: readFlow(), locales: readLocales(), catalogue };
  return createOpening(data, asked, () => new Date().toISOString());
}

/** A file as JSON; undefined where it is none. */
function readJson(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return undefined;
  }
}
