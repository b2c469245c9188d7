import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { type BuiltIn, checkPack, type PackData } from "../pack/index.ts";
import {
  createPackData,
  createPanelData,
  knownDangers,
  ownFlows,
  ownLocales,
  readFlow,
  readLocales,
  readShares,
} from "../workbench/build/index.ts";
import { type OwnFile, reasonOf, writeOwnFiles } from "../workbench/own-files/index.ts";
import { verifyCommand } from "./verify-command.ts";

/**
 * `fridgeside pack [folder] --out <folder>`: a flows folder as a file for each language, for the panel's attribute
 * `flows`. Only flows without a problem are packed, and only what a panel takes at its door.
 * @param pack makes the files
 * @returns exit code 0, 1 where the flows have problems or cannot be written, 2 for unusable options
 */
export async function packCommand(
  args: string[],
  print: (line: string) => void = console.log,
  pack = packFiles,
): Promise<number> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { out: { type: "string" }, locales: { type: "string" }, shares: { type: "string" } },
  });
  const { out, locales = ownLocales } = values;
  const [folder = ownFlows] = positionals;
  if (!out) {
    console.error("Say where to: fridgeside pack [folder] --out <folder>");
    return 2;
  }
  const files = await pack(folder, locales, print, values.shares);
  if (typeof files === "number") return files;
  try {
    writeOwnFiles(out, files, { writer: "pack", now: new Date() });
  } catch (fault) {
    console.error(`The flows cannot be written. ${reasonOf(fault)}`);
    return 1;
  }
  for (const { path } of files) print(join(out, path));
  return 0;
}

/** The file of each language, or the exit code where there is a problem, which it prints. */
export async function packFiles(
  folder: string,
  locales: string,
  print: (line: string) => void,
  sharesFile?: string,
): Promise<OwnFile[] | number> {
  const more = sharesFile === undefined ? [] : ["--shares", sharesFile];
  const verified = await verifyCommand([folder, "--locales", locales, ...more], print);
  if (verified !== 0) return verified;
  const shares = sharesFile === undefined ? {} : readShares(readFileSync(sharesFile, "utf8"));
  const packs = createPacks(readFlow(folder, shares), readLocales(locales));
  const built = createPanelData(readFlow(), readLocales());
  const known = knownDangers(readFlow());
  for (const [tag, each] of Object.entries(packs)) {
    const own = built[tag] ?? built["en-GB"];
    const fault = own ? findPackFault(each, tag, { ...own.start, known }) : "has no language";
    if (fault === null) continue;
    print(`The file for ${tag} ${fault}. Nothing was packed.`);
    return 1;
  }
  return Object.entries(packs).map(([tag, each]) => ({ path: `${tag}.json`, content: JSON.stringify(each) }));
}

/** The packs of every language, for this version of Fridgeside. */
export function createPacks(
  ...[flow, locales]: Parameters<typeof createPanelData>
): Record<string, PackData> {
  const { version } = JSON.parse(readFileSync(ownPackage, "utf8")) as { version: string };
  return createPackData(flow, locales, version);
}

const ownPackage = new URL("../../package.json", import.meta.url);

function findPackFault(pack: PackData, language: string, built: BuiltIn): string | null {
  try {
    for (const _ of checkPack(pack, language, built));
    return null;
  } catch (problem) {
    return problem instanceof Error ? problem.message : "cannot be used";
  }
}
