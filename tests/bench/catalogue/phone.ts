import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright";
import type { Manifest } from "../../../src/catalogue/shards/index.ts";
import { buildScript } from "../build-script.ts";
import { chromiumSwitches } from "../chromium-switches.ts";
import { type Built, lookUp } from "./lookups.ts";
import type { PhoneLookup, PhoneTimes } from "./phone-page.ts";
import type { Typed } from "./sample.ts";

/** How much slower than this machine a phone is taken to be. */
export const slowdown = 4;
const batch = 50;
const runs = 3;

type InPage = {
  measureLookups: (manifest: Manifest, asked: PhoneLookup[]) => Promise<PhoneTimes>;
  measureOpening: (manifest: Manifest) => number;
};

/** How long lookups take in a slowed down browser, the quickest of some runs, by their names; `opening` is the manifest read once. ms. */
export async function measureOnPhone(
  executablePath: string,
  built: Built,
  groups: Record<string, Typed[]>,
): Promise<{ version: string; opening: number; times: Record<string, PhoneTimes> }> {
  const script = await buildScript(new URL("phone-page.ts", import.meta.url));
  const browser = await chromium.launch({ executablePath, args: chromiumSwitches });
  try {
    const page = await browser.newPage();
    const client = await page.context().newCDPSession(page);
    await client.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
    await page.addScriptTag({ content: script });
    const measure = (asked: PhoneLookup[]) =>
      page.evaluate(
        ([manifest, given]) =>
          (globalThis as never as InPage).measureLookups(manifest as Manifest, given as PhoneLookup[]),
        [built.manifest, asked] as unknown[],
      );
    const times: Record<string, PhoneTimes> = {};
    for (const [name, typed] of Object.entries(groups)) {
      const asked: PhoneLookup[] = [];
      for (const each of typed) asked.push(await withFiles(built, each.typed));
      const all: PhoneTimes = { lookups: [], floor: [] };
      for (let at = 0; at < asked.length; at += batch) {
        for (let run = 0; run < runs; run++) {
          const measured = await measure(asked.slice(at, at + batch));
          // The quickest of the runs: what else the machine did meanwhile is none of the lookup's time.
          for (const name of ["lookups", "floor"] as const)
            for (const [place, time] of measured[name].entries())
              all[name][at + place] = Math.min(time, all[name][at + place] ?? time);
        }
      }
      times[name] = all;
    }
    const opening = await page.evaluate(
      (manifest) => (globalThis as never as InPage).measureOpening(manifest),
      built.manifest,
    );
    return { version: browser.version(), opening, times };
  } finally {
    await browser.close();
  }
}

async function withFiles(built: Built, typed: string): Promise<PhoneLookup> {
  const { files } = await lookUp(built, typed);
  const textOf = (path: string) => {
    const file = join(built.files, path);
    return existsSync(file) ? readFileSync(file, "utf8") : null;
  };
  return { typed, files: Object.fromEntries(files.map(({ path }) => [path, textOf(path)])) };
}
