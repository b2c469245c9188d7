import { existsSync, readFileSync } from "node:fs";
import { createInterface } from "node:readline";
import type { Readable } from "node:stream";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { findModel, parseCatalogue, partFor } from "../catalogue/index.ts";
import { readFlow } from "./flows-folder.ts";
import { readLocales } from "./locales-folder.ts";
import { confirmedCode, createPlay, type PlayOptions } from "./play-session.ts";

const demoCatalogue = fileURLToPath(new URL("../../demo/catalogue.json", import.meta.url));

/**
 * `npm run play`: a session without a screen. Prints each turn as one JSON line and reads each answer as one.
 * @returns exit code 0 when an ending was reached, 1 when the answers ran out before, 2 for unusable options
 */
export async function playCommand(args: string[], input: Readable = process.stdin): Promise<number> {
  const options = readPlayOptions(args);
  if (typeof options === "string") {
    console.error(options);
    return 2;
  }
  const play = createPlay(options);
  console.log(JSON.stringify(play.first));
  for await (const line of createInterface({ input })) {
    if (!line.trim()) continue;
    console.log(JSON.stringify(play.take(line)));
    if (play.isOver()) return 0;
  }
  return play.isOver() ? 0 : 1;
}

function readPlayOptions(args: string[]): PlayOptions | string {
  const text = { type: "string" } as const;
  const { values } = parseArgs({
    args,
    options: {
      ...{ scenario: text, locale: text, model: text, now: text, catalogue: text },
      ...{ variant: text, serial: text },
    },
  });
  const flow = readFlow();
  const locales = readLocales();
  const language = values.locale ?? "en-GB";
  if (!locales[language])
    return `--locale: "${language}" has no texts. There are: ${Object.keys(locales).join(", ")}`;
  if (values.scenario && !flow.scenarios[values.scenario])
    return `--scenario: "${values.scenario}" is none. There are: ${Object.keys(flow.scenarios).join(", ")}`;
  if (values.now && Number.isNaN(Date.parse(values.now))) return `--now: "${values.now}" is no RFC 3339 time`;
  const file = values.catalogue ?? demoCatalogue;
  if (!existsSync(file)) return `--catalogue: there is no file "${file}"`;
  const { catalogue } = parseCatalogue(JSON.parse(readFileSync(file, "utf8")));
  const model = values.model ? confirmedCode(findModel(catalogue, values.model)) : null;
  const plate = {
    ...(values.variant ? { variant: values.variant } : {}),
    ...(values.serial ? { serial: values.serial } : {}),
  };
  if (values.model && !model) return `--model: "${values.model}" is not in the catalogue, or not exactly`;
  return {
    flow,
    locales,
    language,
    model,
    scenario: values.scenario ?? null,
    now: values.now ?? new Date().toISOString(),
    partFor: (code, kind) => partFor(catalogue, code, kind, plate),
    findModel: (typed) => findModel(catalogue, typed),
  };
}
