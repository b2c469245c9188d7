import { existsSync, readFileSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { parseCatalogue } from "../catalogue/index.ts";
import {
  ownFlows,
  ownLocales,
  readShares,
  readSource,
  readYamlFiles,
  withShares,
} from "../workbench/build/index.ts";
import { verifyFolder } from "../workbench/verify/index.ts";

const demoCatalogue = fileURLToPath(new URL("../../demo/catalogue.json", import.meta.url));

/**
 * `fridgeside verify [folder]`: everything wrong with a flows folder, one line a problem: `file:line:column message`.
 * Without a folder the project's own flows, held against the demo shop's catalogue. `--shares`: with other shares of causes.
 * @returns exit code 0 without problems, 1 with some, 2 for unusable options
 */
export async function verifyCommand(
  args: string[],
  print: (line: string) => void = console.log,
): Promise<number> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      json: { type: "boolean" },
      locales: { type: "string" },
      catalogue: { type: "string" },
      shares: { type: "string" },
    },
  });
  const [folder = ownFlows] = positionals;
  const locales = values.locales ?? ownLocales;
  const catalogue = values.catalogue ?? (positionals.length ? undefined : demoCatalogue);
  const missing = [folder, locales, catalogue ?? locales, values.shares ?? locales].find(
    (path) => !existsSync(path),
  );
  if (missing || !statSync(folder).isDirectory()) {
    console.error(`There is no folder or file "${missing ?? folder}"`);
    return 2;
  }
  const shares = values.shares === undefined ? {} : readShares(readFileSync(values.shares, "utf8"));
  const flowFiles = withShares(readYamlFiles(folder), shares);
  const textFiles = readYamlFiles(locales);
  const problems = verifyFolder({
    flows: flowFiles,
    locales: textFiles,
    read: readSource,
    ...(catalogue ? { partKinds: kindsIn(catalogue) } : {}),
  }).map((problem) => ({
    ...problem,
    file: shownPath(problem.file in textFiles ? join(locales, problem.file) : join(folder, problem.file)),
  }));
  if (values.json) print(JSON.stringify({ problems }, null, 2));
  else for (const { file, line, column, message } of problems) print(`${file}:${line}:${column} ${message}`);
  if (!values.json) print(summary(problems.length, Object.keys(flowFiles).length));
  return problems.length ? 1 : 0;
}

/** A path as one would type it here. */
function shownPath(path: string): string {
  const near = relative(process.cwd(), path);
  return near.startsWith("..") ? path : near;
}

function kindsIn(catalogue: string): string[] {
  const { catalogue: read } = parseCatalogue(JSON.parse(readFileSync(catalogue, "utf8")));
  return [...new Set(read.parts.map(({ kind }) => kind))];
}

function summary(problems: number, files: number): string {
  const count = problems === 1 ? "1 problem" : `${problems || "No"} problems`;
  return `${count} in ${files} files of the flow`;
}
