import { join } from "node:path";
import { parseArgs } from "node:util";
import { ownFlows, readFlow } from "./flows-folder.ts";
import { ownLocales, readLocales } from "./locales-folder.ts";
import { reasonOf, writeOwnFiles } from "./own-files/index.ts";
import { createPanelData } from "./panel-data.ts";
import { verifyCommand } from "./verify-command.ts";

/**
 * `fridgeside pack [folder] --out <folder>`: a flows folder as a file for each language, for the panel's attribute
 * `flows`. Only flows without a problem are packed.
 * @returns exit code 0, 1 where the flows have problems or cannot be written, 2 for unusable options
 */
export async function packCommand(
  args: string[],
  print: (line: string) => void = console.log,
): Promise<number> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { out: { type: "string" }, locales: { type: "string" } },
  });
  const { out, locales = ownLocales } = values;
  const [folder = ownFlows] = positionals;
  if (!out) {
    console.error("Say where to: fridgeside pack [folder] --out <folder>");
    return 2;
  }
  const verified = await verifyCommand([folder, "--locales", locales], print);
  if (verified !== 0) return verified;
  const data = createPanelData(readFlow(folder), readLocales(locales));
  const files = Object.entries(data).map(([tag, each]) => ({
    path: `${tag}.json`,
    content: JSON.stringify(each),
  }));
  try {
    writeOwnFiles(out, files, { writer: "pack", now: new Date() });
  } catch (fault) {
    console.error(`The flows cannot be written. ${reasonOf(fault)}`);
    return 1;
  }
  for (const { path } of files) print(join(out, path));
  return 0;
}
