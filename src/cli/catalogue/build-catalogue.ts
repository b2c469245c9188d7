import {
  type Collected,
  type CollectedFeed,
  type CollectOptions,
  countMissingKinds,
  createCollector,
  type FeedProblem,
  type Figures,
  UnusableFeed,
} from "../../workbench/feed/index.ts";
import { type FileTools, reasonOf } from "../../workbench/own-files/index.ts";
import { collectShopFeed, type Understood } from "../../workbench/shop-feed/index.ts";
import { readChunks } from "./read-chunks.ts";
import { mappingOf, readShop, type ShopFeed } from "./shop-files.ts";
import { type LaidOut, type Switched, switchCatalogue } from "./switch-catalogue.ts";

export type BuildOptions = {
  feed: string;
  out: string;
  /** Any problem keeps the old catalogue. */
  isStrict: boolean;
  /** Kinds of parts that a session may end with. */
  kinds: readonly string[];
  collect: CollectOptions;
  /** For a feed in the shop's own columns: how it is read. Without it the feed has ours. */
  shop?: ShopFeed;
};

/** All that a build needs from outside. */
export type BuildTools = {
  layOut(collected: Collected): LaidOut;
  files: FileTools;
  /** Milliseconds from any start. */
  now(): number;
  /** Most bytes of memory so far. */
  peak(): number;
  /** The present moment, for the folder's marker. */
  date(): Date;
  run: number;
  progress(done: Progress): void;
};

/** How far reading has come, or writing. */
export type Progress = { rows: number; bytes: number; total: number } | { files: number };

/** What a build did. Without `switched` the old catalogue stays, and `stopped` says why in one sentence. */
export type BuildReport = {
  switched?: Switched;
  stopped?: string;
  figures?: Figures;
  missingKinds: Record<string, number>;
  ignored: readonly string[];
  problems: { total: number; counts: Record<string, number>; first: readonly FeedProblem[] };
  /** Of a feed in the shop's own columns, how many rows could be used, and why the others could not. */
  understood?: Understood;
  /** What to do about a feed that has other columns than ours. */
  hint?: string;
  /** Seconds for reading and collecting, and for all. */
  readSeconds: number;
  seconds: number;
  peakBytes: number;
};

/** Reads a feed, and where it is good enough writes the catalogue and switches to it. Never throws for a bad feed. */
export function buildCatalogue(options: BuildOptions, tools: BuildTools): BuildReport {
  const start = tools.now();
  const report: BuildReport = {
    missingKinds: {},
    ignored: [],
    problems: { total: 0, counts: {}, first: [] },
    readSeconds: 0,
    seconds: 0,
    peakBytes: 0,
  };
  const stopped = fill(report, options, tools, start);
  if (stopped) report.stopped = `${stopped}. The catalogue in ${options.out} stays as it was.`;
  report.seconds = (tools.now() - start) / 1000;
  report.peakBytes = tools.peak();
  return report;
}

/** @returns why nothing was switched, or null */
function fill(report: BuildReport, options: BuildOptions, tools: BuildTools, start: number): string | null {
  const collected = collect(report, options, tools);
  report.readSeconds = (tools.now() - start) / 1000;
  if (typeof collected === "string") return collected;
  const problems = report.problems.total + lossesOf(report);
  if (options.isStrict && problems > 0)
    return `The feed has ${counted(problems, "problem")}, and --strict takes none`;
  if (collected.models.length === 0) return "The feed has no row that can be used";
  try {
    const { manifest, files } = tools.layOut(collected);
    const laidOut = { manifest, files: showing(files, tools) };
    report.switched = switchCatalogue(options.out, laidOut, tools.files, tools.run, tools.date());
    return null;
  } catch (fault) {
    return `The catalogue cannot be written. ${reasonOf(fault)}`;
  }
}

function* showing<File>(files: Iterable<File>, tools: BuildTools): Generator<File> {
  let count = 0;
  for (const file of files) {
    if (count++ % 256 === 0) tools.progress({ files: count });
    yield file;
  }
}

function lossesOf({ understood }: BuildReport): number {
  const all = [...(understood?.parts.losses ?? []), ...(understood?.fitments?.losses ?? [])];
  return all.reduce((sum, { count }) => sum + count, 0);
}

function collect(report: BuildReport, options: BuildOptions, tools: BuildTools): Collected | string {
  let finished: CollectedFeed;
  try {
    finished = options.shop ? collectShop(report, options.shop, options, tools) : collectOurs(options, tools);
  } catch (fault) {
    if (fault instanceof UnusableFeed) {
      const look = `fridgeside catalogue inspect ${options.feed}`;
      report.hint = options.shop?.mapping
        ? `To see how the feed is read: ${look}`
        : `To have a feed with other columns read: ${look} --write mapping.json`;
      return fault.message;
    }
    return `The feed cannot be read. ${reasonOf(fault)}`;
  }
  const { collected, figures, problems, ignored } = finished;
  report.figures = figures;
  report.ignored = ignored;
  report.problems = {
    total: problems.total,
    counts: Object.fromEntries(problems.counts),
    first: problems.first,
  };
  report.missingKinds = countMissingKinds(collected, options.kinds);
  return collected;
}

function collectOurs(options: BuildOptions, tools: BuildTools): CollectedFeed {
  const collector = createCollector(options.collect);
  const passed = (bytes: number, total: number) => tools.progress({ rows: collector.rows, bytes, total });
  for (const chunk of readChunks(options.feed, tools.files, passed)) collector.push(chunk);
  collector.end();
  return collector.finish();
}

function collectShop(
  report: BuildReport,
  shop: ShopFeed,
  { kinds, collect }: BuildOptions,
  { files }: BuildTools,
): CollectedFeed {
  const tables = readShop(shop, files);
  const { feed, understood } = collectShopFeed(tables, mappingOf(tables, shop.said, kinds), kinds, collect);
  report.understood = understood;
  return feed;
}

/** `1 problem`, `2 problems`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}
