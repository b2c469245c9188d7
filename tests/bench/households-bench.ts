import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { benchHouseholds } from "./households/index.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const chart = `${root}demo/charts/households.svg`;

/** Sends simulated homes through ours and through lists, prints what came of it, and writes the README's chart. */
export function printHouseholds(homes = 20_000): void {
  const { text, svg } = benchHouseholds(readFlow(), () => performance.now(), homes);
  mkdirSync(dirname(chart), { recursive: true });
  writeFileSync(chart, svg);
  console.log(`${text}\n\nThe chart lies in ${relative(root, chart)}.`);
}
