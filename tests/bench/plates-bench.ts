import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { chromium, type Page } from "playwright";
import { plateFilesOf } from "../../src/workbench/build/plate-files.ts";
import { buildScript } from "./build-script.ts";
import { chromiumSwitches } from "./chromium-switches.ts";
import { type Distortion, distortions } from "./plates/distort.ts";
import type { PlateRead, PlatesPage } from "./plates/page.ts";
import { medianOf, tableOf } from "./table.ts";

/** Of all plates: the true code among those offered, and as the first. */
const goal = { offered: 0.95, first: 0.85 };

type Tally = { all: PlateRead[] };

/**
 * `npm run bench -- plates [--seed unseen] [--share 1]`: two hundred photos of plates that a seed draws, read in Chromium
 * by the same code and files as in a shop. `share` takes so large a part of each kind of photo.
 */
export async function benchPlates(args: string[], executablePath: string): Promise<void> {
  const { values } = parseArgs({
    args,
    options: { seed: { type: "string", default: "tuning" }, share: { type: "string", default: "1" } },
  });
  const { address, folder, close } = await servePlates();
  const browser = await chromium.launch({ executablePath, args: chromiumSwitches });
  try {
    const page = await browser.newPage();
    await page.goto(address);
    await page.addScriptTag({ content: await buildScript(new URL("plates/page.ts", import.meta.url)) });
    const tallies = await readAll(page, folder, values.seed, Number(values.share));
    console.log(reportOf(tallies));
    console.log(`\nSeed "${values.seed}", Chromium ${browser.version()}`);
  } finally {
    await browser.close();
    close();
  }
}

async function readAll(
  page: Page,
  folder: string,
  seed: string,
  share: number,
): Promise<Map<Distortion, Tally>> {
  const feed = JSON.parse(
    readFileSync(fileURLToPath(new URL("../../demo/catalogue.json", import.meta.url)), "utf8"),
  );
  type Window = typeof globalThis & PlatesPage;
  await page.evaluate(([at, given]) => (globalThis as Window).startReader(at as string, given), [
    folder,
    feed,
  ] as [string, unknown]);
  const tallies = new Map<Distortion, Tally>();
  for (const [spoilt, count] of Object.entries(distortions) as [Distortion, number][]) {
    const all: PlateRead[] = [];
    for (let each = 0; each < Math.ceil(count * share); each++)
      all.push(
        await page.evaluate(([own, kind]) => (globalThis as Window).readPhoto(own, kind as Distortion), [
          `${seed} ${spoilt} ${each}`,
          spoilt,
        ] as [string, string]),
      );
    tallies.set(spoilt, { all });
  }
  return tallies;
}

function reportOf(tallies: Map<Distortion, Tally>): string {
  const everything = [...tallies.values()].flatMap(({ all }) => all);
  const isFirst = ({ code, found }: PlateRead) => found[0] === code;
  const isOffered = ({ code, found }: PlateRead) => found.includes(code);
  const row = (name: string, all: PlateRead[]) => [
    name,
    `${all.length}`,
    `${all.filter(isFirst).length}`,
    `${all.filter(isOffered).length}`,
    `${all.filter(({ found }) => found.length === 0).length}`,
    `${all.filter((one) => one.isAsRead && !isFirst(one)).length}`,
    `${(medianOf(all.map(({ took }) => took)) / 1000).toFixed(1)} s`,
  ];
  const table = tableOf([
    ["photo", "plates", "first", "offered", "nothing", "as read, wrong", "median"],
    ...[...tallies].map(([spoilt, { all }]) => row(spoilt, all)),
    row("all", everything),
  ]);
  const shareOf = (is: (one: PlateRead) => boolean) => everything.filter(is).length / everything.length;
  const says = (name: string, share: number, least: number) =>
    `${share >= least ? "met" : "NOT met"}: ${name} in ${100 * least} %: ${(100 * share).toFixed(1)} %`;
  return [
    table,
    "",
    says("the true code among the three", shareOf(isOffered), goal.offered),
    says("the true code first", shareOf(isFirst), goal.first),
    "met: taken without a tap: 0, as a reader only ever offers",
  ].join("\n");
}

const types: Record<string, string> = {
  ".js": "text/javascript",
  ".wasm": "application/wasm",
  "": "text/html",
};

/** An empty page, and beside it what a shop serves for photos. */
async function servePlates(): Promise<{ address: string; folder: string; close(): void }> {
  const { version, files } = plateFilesOf();
  const contents = new Map(files.map(({ path, content }) => [`/${path}`, Buffer.from(content)]));
  contents.set("/", Buffer.from("<!doctype html><title>Plates</title>"));
  const server = createServer((request, response) => {
    const path = request.url ?? "/";
    const content = contents.get(path);
    const type = types[extname(path)] ?? "application/octet-stream";
    response.writeHead(content ? 200 : 404, { "content-type": type }).end(content);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  return { address, folder: `${address}plate/${version}/`, close: () => server.close() };
}
