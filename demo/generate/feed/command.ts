import { readFileSync } from "node:fs";
import { Readable, type Writable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { parseArgs } from "node:util";
import { parse } from "yaml";
import { createDemoFeed } from "./feed.ts";

const most = 10_000_000;

/**
 * `npm run demo-feed -- --models 1000000 --seed 7 [--jsonl] [--dense]`: prints a feed, as fast as it is taken.
 * @returns exit code 0, also where the reader has had enough; 2 for unusable options
 */
export async function demoFeedCommand(args: string[], out: Writable = process.stdout): Promise<number> {
  const { values } = parseArgs({
    args,
    options: {
      models: { type: "string", default: "1000" },
      seed: { type: "string", default: "7" },
      jsonl: { type: "boolean", default: false },
      dense: { type: "boolean", default: false },
    },
  });
  const [models, seed] = [values.models, values.seed].map((text) => (/^\d+$/.test(text) ? Number(text) : -1));
  if (models === undefined || models < 1 || models > most) {
    console.error(`--models: "${values.models}" is no whole number from 1 to ${most}`);
    return 2;
  }
  if (seed === undefined || seed < 0 || seed >= 2 ** 31) {
    console.error(`--seed: "${values.seed}" is no whole number from 0 to ${2 ** 31 - 1}`);
    return 2;
  }
  const minutes = readMinutes();
  const feed = createDemoFeed({ models, seed, minutes, dense: values.dense, jsonLines: values.jsonl });
  try {
    await pipeline(Readable.from(feed), out, { end: false });
  } catch (problem) {
    // Who pipes into `head` closes early; that is no mistake.
    if ((problem as { code?: string }).code !== "EPIPE") throw problem;
  }
  return 0;
}

/** The time for fitting a part, by kind. */
export function readMinutes(): Record<string, number> {
  const file = new URL("../../../flows/parts.yaml", import.meta.url);
  const kinds: Record<string, { minutes: number }> = parse(readFileSync(file, "utf8"));
  return Object.fromEntries(Object.entries(kinds).map(([kind, { minutes }]) => [kind, minutes]));
}
