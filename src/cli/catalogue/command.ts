import { parseArgs } from "node:util";
import { setFlagsFromString } from "node:v8";
import { brotliCompressSync, constants } from "node:zlib";
import { ownFlows } from "../../workbench/build/index.ts";
import { type CollectOptions, readOwnHeadings, UnusableFeed } from "../../workbench/feed/index.ts";
import { realFiles } from "../../workbench/own-files/index.ts";
import { layOut } from "../../workbench/shards/index.ts";
import { type BuildTools, buildCatalogue, counted, type Progress } from "./build-catalogue.ts";
import { inspectCommand } from "./inspect-command.ts";
import { megabytes, reportLines } from "./report-lines.ts";
import { readSaid, type ShopFeed } from "./shop-files.ts";
import { readTrade } from "./trade.ts";

const usage = [
  "Say what to build: fridgeside catalogue build <feed> --out <folder> [--columns number=SKU,…] [--brand --machine --shop-name --flows] [--strict] [--json] [--progress]",
  "For a feed in other columns than ours: [--mapping file] [--fitments <second file>] [--encoding --currency --base --kinds file --models-split]",
  "To see how such a feed is understood: fridgeside catalogue inspect <feed> [--write mapping.json] [--json] [the same options]",
].join("\n");

/**
 * What was let go is collected once the heap has grown by a quarter: of a million models twice as much lay about as was
 * needed, and waiting for more of it saves no time.
 */
const eager = "--heap-growing-percent=25";

/** With one of these the feed is not in our columns. */
const shopOptions = ["mapping", "fitments", "encoding", "currency", "base", "kinds", "models-split"] as const;

/**
 * `fridgeside catalogue build <feed> --out <folder>`: a retailer's feed, CSV or JSON lines, as a catalogue of many small
 * files that any web server can serve; `inspect <feed>` says how a feed in other columns is understood.
 * @returns exit code 0 where the new catalogue is served, 1 where the old one stays, 2 for unusable options
 */
export async function catalogueCommand(
  args: string[],
  print: (line: string) => void = console.log,
  given: Partial<BuildTools> = {},
): Promise<number> {
  const text = { type: "string" } as const;
  const flag = { type: "boolean", default: false } as const;
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      ...{ out: text, columns: text, brand: text, machine: text, "shop-name": text, flows: text },
      ...{ mapping: text, fitments: text, encoding: text, currency: text, base: text, kinds: text },
      ...{ "models-split": text, write: text },
      ...{ strict: flag, json: flag, progress: flag },
    },
  });
  const [action, feed, ...others] = positionals;
  const own = values.columns === undefined ? undefined : readOwnHeadings(values.columns);
  const isComplete = action === "inspect" || (action === "build" && values.out);
  if (!isComplete || !feed || others.length > 0 || typeof own === "string") {
    console.error(typeof own === "string" ? `--columns: ${own}` : usage);
    return 2;
  }
  const files = given.files ?? realFiles;
  const isOfShop = action === "inspect" || shopOptions.some((name) => values[name] !== undefined);
  let shop: ShopFeed | undefined;
  try {
    const { fitments, mapping } = values;
    const second = { ...(fitments ? { fitments } : {}), ...(mapping ? { mapping } : {}) };
    if (isOfShop) shop = { feed, ...second, said: readSaid(values, own, files) };
  } catch (fault) {
    if (!(fault instanceof UnusableFeed)) throw fault;
    console.error(fault.message);
    return 2;
  }
  const { kinds, few } = readTrade(values.flows ?? ownFlows);
  if (shop && action === "inspect") return inspectCommand(shop, values, kinds, files, print);
  const collect: CollectOptions = {
    few,
    ...(own ? { own } : {}),
    ...(values["shop-name"] ? { shop: values["shop-name"] } : {}),
    defaults: {
      ...(values.brand ? { brand: values.brand } : {}),
      ...(values.machine ? { machine: values.machine } : {}),
    },
  };
  setFlagsFromString(eager);
  const progress = createProgressLine(values.progress || process.stderr.isTTY);
  const report = buildCatalogue(
    {
      ...{ feed, out: values.out ?? "", isStrict: values.strict, kinds, collect },
      ...(shop ? { shop } : {}),
    },
    {
      layOut: (collected) => layOut(collected, onTheWay),
      files,
      now: () => performance.now(),
      date: () => new Date(),
      peak: () => process.resourceUsage().maxRSS * 1024,
      run: process.pid,
      progress: progress.show,
      ...given,
    },
  );
  progress.end();
  if (values.json) print(JSON.stringify({ feed, ...report }, null, 2));
  else for (const line of reportLines(feed, report)) print(line);
  return report.switched ? 0 : 1;
}

/** Bytes of a text as a web server sends it that compresses while it serves; one that does so beforehand sends less. */
const onTheWay = (text: string) =>
  brotliCompressSync(text, { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } }).length;

/** One line of the terminal, written over again and again. */
function createProgressLine(isShown: boolean) {
  let width = 0;
  return {
    show(done: Progress) {
      if (!isShown) return;
      // What was written over may have been longer.
      const line = "files" in done ? `${counted(done.files, "file")} written` : readSoFar(done);
      process.stderr.write(`\r${line.padEnd(width)}`);
      width = line.length;
    },
    end() {
      if (width > 0) process.stderr.write("\n");
    },
  };
}

function readSoFar({ rows, bytes, total }: { rows: number; bytes: number; total: number }): string {
  return `${rows} rows, ${megabytes(bytes)} MB of ${megabytes(total)} MB`;
}
