import { join } from "node:path";
import { parseArgs } from "node:util";
import { buildEmbed, distFolder, firstFile, keptFor } from "../workbench/build/index.ts";
import { reasonOf } from "../workbench/own-files/index.ts";

/**
 * `fridgeside build [--out dist] [--keep 5] [--keep-days 30] [--maps <folder>]`: the script that a shop embeds. The parts of the last
 * `keep` builds stay, and those of any that was in use within the last `keep-days` days.
 * @returns exit code 0, 1 where nothing could be written, 2 for unusable options
 */
export async function buildCommand(
  args: string[],
  print: (line: string) => void = console.log,
  build: typeof buildEmbed = buildEmbed,
): Promise<number> {
  const { values } = parseArgs({
    args,
    options: {
      out: { type: "string" },
      maps: { type: "string" },
      keep: { type: "string", default: String(keptFor.keep) },
      "keep-days": { type: "string", default: String(keptFor.keepDays) },
    },
  });
  const [keep, keepDays] = [values.keep, values["keep-days"]].map(wholeNumber);
  if (keep === undefined || keep < 1 || keep > 100) {
    console.error(`--keep: "${values.keep}" is no whole number from 1 to 100`);
    return 2;
  }
  if (keepDays === undefined || keepDays < 0 || keepDays > 3650) {
    console.error(`--keep-days: "${values["keep-days"]}" is no whole number from 0 to 3650`);
    return 2;
  }
  try {
    await build(values.out ?? distFolder, {
      keep,
      keepDays,
      ...(values.maps && { maps: values.maps }),
    });
  } catch (fault) {
    console.error(`The script cannot be written. ${reasonOf(fault)}`);
    return 1;
  }
  print(`Built ${join(values.out ?? "dist", firstFile)}`);
  return 0;
}

function wholeNumber(text: string): number {
  return /^\d{1,9}$/.test(text) ? Number(text) : -1;
}
