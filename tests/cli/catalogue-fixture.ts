import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import {
  type BuildReport,
  type BuildTools,
  buildCatalogue,
  type LaidOut,
} from "../../src/cli/catalogue/index.ts";
import type { Collected } from "../../src/workbench/feed/index.ts";
import { realFiles } from "../../src/workbench/own-files/index.ts";

const heading = "brand,model,machine,kind,number,name,price,currency";

/** A feed of this many models of Wexmarrow, with one part each. */
export function feedOf(count: number, name = "Ice bin"): string {
  const rows = Array.from(
    { length: count },
    (_, at) => `Wexmarrow,WX-${at},french-door,ice-bin,LLS-${at},${name},34.99,GBP`,
  );
  return [heading, ...rows, ""].join("\n");
}

/** The simplest layout: a file for each model. */
export function layOutByModel({ models, parts, offsets, partOf }: Collected): LaidOut {
  return {
    manifest: { models: models.length },
    files: models.map(({ key }, model) => ({
      path: `models/${key}.json`,
      text: JSON.stringify([...partOf.slice(offsets[model], offsets[model + 1])].map((part) => parts[part])),
    })),
  };
}

export function build(
  feed: string,
  out: string,
  change: Partial<BuildTools> = {},
  isStrict = false,
): BuildReport {
  return buildCatalogue(
    { feed, out, isStrict, kinds: ["ice-bin", "water-filter"], collect: { few: 3 } },
    {
      layOut: layOutByModel,
      files: realFiles,
      now: () => 0,
      date: () => new Date("2026-03-04T05:06:07Z"),
      peak: () => 0,
      run: 1,
      progress: () => {},
      ...change,
    },
  );
}

/** What a page would read now: each file that the manifest leads to, by path. */
export function served(out: string): { folder: string; files: Record<string, string> } | null {
  if (!existsSync(join(out, "catalogue.json"))) return null;
  const { folder } = JSON.parse(readFileSync(join(out, "catalogue.json"), "utf8"));
  const paths = readdirSync(join(out, folder), { recursive: true, encoding: "utf8" }).filter((path) =>
    path.endsWith(".json"),
  );
  const files = paths.sort().map((path) => [path, readFileSync(join(out, folder, path), "utf8")]);
  return { folder, files: Object.fromEntries(files) };
}
