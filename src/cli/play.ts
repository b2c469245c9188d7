import { existsSync, readFileSync } from "node:fs";
import type { Readable } from "node:stream";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { findModel, parseCatalogue, partFor } from "../catalogue/index.ts";
import { compileFlow, guideOf, inRegion } from "../compile/index.ts";
import { regionIn } from "../guide/index.ts";
import type { Guide } from "../session/index.ts";
import { createTexts, type Texts } from "../turn/index.ts";
import { readFlow, readLocales } from "../workbench/build/index.ts";
import { createConversations, type Wishes } from "./play-conversations.ts";
import { longestLine, readLines } from "./play-lines.ts";
import { confirmedCode, type PlayOptions } from "./play-session.ts";

const demoCatalogue = fileURLToPath(new URL("../../demo/catalogue.json", import.meta.url));

/**
 * `npm run play`: a session without a screen. Prints each turn as one JSON line and reads each answer as one; a line
 * `{"begin":{…}}` starts another conversation in the same process, which then goes on until its input ends.
 * @returns exit code 0 when an ending was reached, 1 when the answers ran out before, 2 for unusable options
 */
export async function playCommand(args: string[], input: Readable = process.stdin): Promise<number> {
  const { catalogue: file = demoCatalogue, ...wishes } = readArguments(args);
  const open = existsSync(file)
    ? createOpening(file, wishes)
    : () => `--catalogue: there is no file "${file}"`;
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

/** Makes the options of conversations that share flow, charts, texts and catalogue. */
function createOpening(file: string, asked: Wishes): (wishes: Wishes) => PlayOptions | string {
  const flow = readFlow();
  const compiled = compileFlow(flow);
  const locales = readLocales();
  const json = readJson(file);
  if (json === undefined) return () => `--catalogue: "${file}" is no JSON`;
  const { catalogue } = parseCatalogue(json);
  const known = new Map<string, { guide: Guide; texts: Texts }>();
  const openIn = (language: string) => {
    const guide = guideOf(inRegion(compiled, regionIn(flow.regions, language)));
    return { guide, texts: createTexts(locales, language, guide.flow) };
  };
  return (wishes) => {
    const { scenario = null, locale, model: typed, variant, serial, now } = { ...asked, ...wishes };
    const language = locale ?? "en-GB";
    if (!Object.hasOwn(locales, language))
      return `--locale: "${language}" has no texts. There are: ${Object.keys(locales).join(", ")}`;
    if (scenario && !Object.hasOwn(flow.scenarios, scenario))
      return `--scenario: "${scenario}" is none. There are: ${Object.keys(flow.scenarios).join(", ")}`;
    if (now && Number.isNaN(Date.parse(now))) return `--now: "${now}" is no RFC 3339 time`;
    const model = typed ? confirmedCode(findModel(catalogue, typed)) : null;
    if (typed && !model) return `--model: "${typed}" is not in the catalogue, or not exactly`;
    const { guide, texts } = known.get(language) ?? openIn(language);
    known.set(language, { guide, texts });
    const plate = { ...(variant ? { variant } : {}), ...(serial ? { serial } : {}) };
    return {
      guide,
      locales,
      language,
      texts,
      model,
      scenario: scenario || null,
      now: now ?? new Date().toISOString(),
      partFor: (code, kind) => partFor(catalogue, code, kind, plate),
      findModel: (code) => findModel(catalogue, code),
    };
  };
}

/** A file as JSON; undefined where it is none. */
function readJson(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return undefined;
  }
}
