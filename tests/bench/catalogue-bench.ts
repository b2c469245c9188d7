import { mkdtempSync, rmSync, statSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { demoCodes } from "../../demo/generate/feed/index.ts";
import { readTrade } from "../../src/cli/catalogue/trade.ts";
import { ownFlows } from "../../src/workbench/build/index.ts";
import { accuracyOf } from "../workbench/shop-feed/accuracy.ts";
import { shopShape } from "../workbench/shop-feed/shop-shape.ts";
import { commandLine, demoGenerator, runScript, type Took } from "./catalogue/child.ts";
import { filesOf, sizeOfAll } from "./catalogue/folder.ts";
import { type Built, openBuilt } from "./catalogue/lookups.ts";
import { measureLookups } from "./catalogue/measure.ts";
import { measureOnPhone, slowdown } from "./catalogue/phone.ts";
import {
  accuracyReport,
  goalsOfAccuracy,
  goalsOfBuild,
  goalsOfLookups,
  inMegabytes,
  inSeconds,
  phoneReport,
  printGoals,
  sizesReport,
  timesReport,
  trafficReport,
} from "./catalogue/report.ts";
import { sampleOf, typedRightly, typedWrongly } from "./catalogue/sample.ts";
import { reportShopPath } from "./catalogue/shop-path.ts";
import { createScales } from "./catalogue/weight.ts";
import { inKilobytes } from "./table.ts";

type Feed = { models: number; seed: number; dense: boolean };

/** Lookups on the phone, of each kind. */
const onPhone = 300;
/** Shards that are compressed to know the size of them all. */
const weighedShards = 1000;

/**
 * `npm run bench -- catalogue [--models 1000000] [--seed 7] [--codes sparse] [--shop-rows 152500]`: a feed in a shop's own columns,
 * inspected and built; then a made feed of that many models, built by the command line and looked up, once with codes that are few
 * among the possible ones and once with codes numbered through. `--codes none` ends after the shop's.
 */
export async function benchCatalogue(args: string[], chromium: string): Promise<void> {
  const { values } = parseArgs({
    args,
    options: {
      models: { type: "string", default: "1000000" },
      seed: { type: "string", default: "7" },
      codes: { type: "string", default: "both" },
      "shop-rows": { type: "string", default: "152500" },
    },
  });
  const [models, seed] = [Number(values.models), Number(values.seed)];
  reportShopFeed();
  const folder = mkdtempSync(join(tmpdir(), "fridgeside-catalogue-"));
  try {
    title("A large feed as shops have it, each command in a process of its own");
    sayHowBusy();
    await reportShopPath(Number(values["shop-rows"]), seed, folder);
    for (const dense of [false, true]) {
      if (!["both", dense ? "dense" : "sparse"].includes(values.codes)) continue;
      await benchFeed({ models, seed, dense }, join(folder, `${dense}`), chromium);
      rmSync(join(folder, `${dense}`), { recursive: true, force: true });
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** How much of a feed in a shop's own columns ends in the catalogue. */
function reportShopFeed(): void {
  const shape = shopShape();
  title(`A feed as shops have it, ${shape.rows} rows, by the mapping that inspect finds`);
  const { truth, found, wrong, understood } = accuracyOf(shape, readTrade(ownFlows).kinds);
  console.log(
    `${found} of ${truth} true fitments (${((100 * found) / truth).toFixed(2)} %), ${wrong.length} wrong ones`,
  );
  for (const { of, count, message } of understood.parts.losses)
    if (of !== "note") console.log(`${count} ${of}s left out: ${message}`);
}

async function benchFeed(feed: Feed, folder: string, chromium: string): Promise<void> {
  const { models, dense } = feed;
  title(`${models} models, codes ${dense ? "numbered through" : "few among the possible ones"}`);
  sayHowBusy();
  const made = `${folder}.csv`;
  const options = ["--models", `${models}`, "--seed", `${feed.seed}`, ...(dense ? ["--dense"] : [])];
  const making = await runScript(demoGenerator, ["feed", ...options], made);
  const bytes = statSync(made).size;
  const floor = await runScript(script("parse-floor.ts"), [made]);
  const { rows, problems } = JSON.parse(floor.said);
  console.log(
    `${rows} rows, ${inMegabytes(bytes)}, made in ${inSeconds(making.seconds)}; ${problems} problems.\n`,
  );
  const build = await runScript(commandLine, ["catalogue", "build", made, "--out", folder, "--json"]);
  const { readSeconds, seconds } = JSON.parse(build.said);
  console.log(timesReport(bytes, floor, { "the catalogue built by the command line": build }));
  console.log(
    `By the build itself: read and collected after ${inSeconds(readSeconds)}, all after ${inSeconds(seconds)}.\n`,
  );
  const built = openBuilt(folder);
  const weigh = createScales();
  await reportSizes(built, floor, build, weigh);
  if (!dense) await reportMap(feed);

  const measured = await measureLookups(built, feed, weigh);
  title("Requests and bytes of a lookup by a phone that has only the manifest");
  console.log(`${trafficReport(measured)}\n\n${printGoals(goalsOfLookups(measured))}`);
  title("What becomes of what is typed");
  console.log(`${accuracyReport(measured.accuracy)}\n\n${printGoals(goalsOfAccuracy(measured.accuracy))}`);
  await reportPhone(built, feed, chromium);
}

async function reportSizes(
  built: Built,
  floor: Took,
  build: Took,
  weigh: ReturnType<typeof createScales>,
): Promise<void> {
  const sizes = {
    shards: await sizeOfAll(filesOf(built, "models"), weigh, weighedShards),
    nearby: await sizeOfAll(filesOf(built, "nearby"), weigh, Number.POSITIVE_INFINITY),
  };
  const { raw, quick, best } = await weigh(built.file);
  console.log(
    `${sizesReport(sizes)}\nManifest, read once: ${inKilobytes(raw)}, ${inKilobytes(quick)} brotli 5, ${inKilobytes(best)} brotli 11.\n`,
  );
  console.log(printGoals(goalsOfBuild(floor, build, sizes)));
}

async function reportMap({ models, seed }: Feed): Promise<void> {
  const { said } = await runScript(script("exact-map.ts"), [`${models}`, `${seed}`]);
  const { seconds, bytes, microseconds, isComplete } = JSON.parse(said);
  title("Floor of lookups: all codes in one Map, on this machine");
  console.log(
    `made in ${inSeconds(seconds)}, ${inMegabytes(bytes)}, ${microseconds.toFixed(2)} µs for each lookup${isComplete ? "" : ", and NOT all found"}`,
  );
}

async function reportPhone(built: Built, feed: Feed, chromium: string): Promise<void> {
  const sample = sampleOf([...demoCodes(feed)], onPhone, feed.seed);
  const { version, opening, times } = await measureOnPhone(chromium, built, {
    "as printed": typedRightly(sample, feed.seed),
    "with a slip": typedWrongly(sample, feed.seed),
  });
  title(`A lookup in Chromium ${version}, slowed down ${slowdown} times, files from memory`);
  sayHowBusy();
  console.log(`${phoneReport(times)}\nThe manifest made ready, once: ${opening.toFixed(1)} ms`);
}

/** What else ran meanwhile is in every time. */
function sayHowBusy(): void {
  const busy = (loadavg()[0] ?? 0) / cpus().length;
  if (busy > 0.7)
    console.log(`This machine is busy (${busy.toFixed(1)} tasks for each processor): times are too long.`);
}

const script = (name: string) => fileURLToPath(new URL(`catalogue/${name}`, import.meta.url));

const title = (text: string) => console.log(`\n${text}\n${"-".repeat(text.length)}`);
