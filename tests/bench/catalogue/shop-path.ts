import { statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { shopShape } from "../../workbench/shop-feed/shop-shape.ts";
import { commandLine, runScript } from "./child.ts";
import { inMegabytes, timesReport } from "./report.ts";

const floorScript = fileURLToPath(new URL("shop-floor.ts", import.meta.url));
/** Models that the cells of the feed are drawn from: some 17 parts for each. */
const different = 200_000;

/**
 * Inspects and builds a feed in a shop's own columns, a row a part with a list of models, beside reading it alone.
 * @param folder that is empty, and nobody else's
 */
export async function reportShopPath(rows: number, seed: number, folder: string): Promise<void> {
  const feed = join(folder, "shop.csv");
  writeFileSync(feed, shopShape(rows, seed, different).text);
  const bytes = statSync(feed).size;
  const floor = await runScript(floorScript, [feed]);
  // Among so many codes some have a blank, as two beside each other have, and the command would ask.
  const said = ["--models-split", ",", "--base", "https://shop.example", "--json"];
  const inspect = await runScript(commandLine, ["catalogue", "inspect", feed, ...said]);
  const out = join(folder, "shop");
  const build = await runScript(commandLine, ["catalogue", "build", feed, "--out", out, ...said]);
  const { fitments } = JSON.parse(inspect.said);
  console.log(`${rows} rows, ${inMegabytes(bytes)}, ${fitments} fitments\n`);
  const commands = { "how it is understood (inspect)": inspect, "the catalogue built of it": build };
  console.log(timesReport(bytes, floor, commands));
}
