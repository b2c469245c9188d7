import { type ColumnName, UnusableFeed } from "../../workbench/feed/index.ts";
import { type FileTools, reasonOf } from "../../workbench/own-files/index.ts";
import {
  decode,
  guessMapping,
  type Mapping,
  readKinds,
  readMapping,
  readSplit,
  readTable,
  type Said,
  type ShopTables,
  shopFeedBounds,
  type Table,
  tooBig,
  unpack,
  withSaid,
} from "../../workbench/shop-feed/index.ts";

/** A shop's feed as it is named on the command line: its files, how they are read, and what is said besides. */
export type ShopFeed = { feed: string; fitments?: string; mapping?: string; said: Said };

/** The files as tables, and for each how its text was read. */
export type ReadShop = ShopTables & {
  encodings: { file: string; encoding: string; why: string }[];
  mapping?: Mapping;
};

/** What `--kinds` and the other options say. @throws UnusableFeed where one of them cannot be used */
export function readSaid(
  options: { encoding?: string; currency?: string; base?: string; "models-split"?: string; kinds?: string },
  columns: ReadonlyMap<ColumnName, string> | undefined,
  files: FileTools,
): Said {
  const { encoding, currency, base, "models-split": modelsSplit, kinds } = options;
  if (currency !== undefined && !/^[A-Za-z]{3}$/.test(currency))
    throw new UnusableFeed(`--currency: "${currency}" is none of the three letters of ISO 4217, such as EUR`);
  if (modelsSplit !== undefined && !readSplit(modelsSplit))
    throw new UnusableFeed(`--models-split: "${modelsSplit}" is none of , ; / | newline and none`);
  if (base !== undefined && !/^https?:\/\/[^/]/.test(base))
    throw new UnusableFeed(`--base: "${base}" is no address that begins with http:// or https://`);
  return {
    ...(encoding ? { encoding: encoding.toLowerCase() } : {}),
    ...(currency ? { currency: currency.toUpperCase() } : {}),
    ...(base ? { base } : {}),
    ...(modelsSplit ? { modelsSplit } : {}),
    ...(kinds ? { kinds: readKinds(textOf(kinds, files), kinds) } : {}),
    ...(columns ? { columns: Object.fromEntries(columns) } : {}),
  };
}

/** Reads a shop's files. @throws UnusableFeed where one of them cannot be used at all; whatever `files` throws */
export function readShop({ feed, fitments, mapping: path, said }: ShopFeed, files: FileTools): ReadShop {
  const mapping = path === undefined ? undefined : withSaid(readMapping(textOf(path, files), path), said);
  const encodings: ReadShop["encodings"] = [];
  const table = (file: string, how?: Pick<Mapping, "encoding" | "delimiter">): Table => {
    const encoding = said.encoding ?? how?.encoding;
    const { text, ...read } = decode(unpack(bytesOf(file, files)), encoding);
    encodings.push({ file, ...read });
    return readTable(text, how?.delimiter);
  };
  return {
    parts: table(feed, mapping),
    ...(fitments ? { fitments: table(fitments, mapping?.fitments) } : {}),
    encodings,
    ...(mapping ? { mapping } : {}),
  };
}

/** The mapping of a build: the one that was given, or what the feed seems to be where nothing is left to be said. */
export function mappingOf(shop: ReadShop, said: Said, kinds: readonly string[]): Mapping {
  if (shop.mapping) return shop.mapping;
  const { mapping, needs } = guessMapping(shop, said, kinds);
  if (needs[0]) throw new UnusableFeed(needs[0].replace(/\.$/, ""));
  return mapping;
}

function bytesOf(path: string, files: FileTools): Buffer {
  const { size } = files.statSync(path);
  if (size > shopFeedBounds.bytes) throw tooBig();
  return files.readFileSync(path);
}

function textOf(path: string, files: FileTools): string {
  try {
    return bytesOf(path, files).toString("utf8");
  } catch (fault) {
    if (fault instanceof UnusableFeed) throw fault;
    throw new UnusableFeed(`${path} cannot be read. ${reasonOf(fault)}`);
  }
}
