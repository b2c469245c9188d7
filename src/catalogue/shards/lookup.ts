import type { Plate } from "../condition.ts";
import { codeDistance } from "../edit-distance.ts";
import { baseOf } from "../ending.ts";
import { type FitResult, partFor } from "../fitment.ts";
import { type FindResult, findModel, mostCandidates } from "../matching.ts";
import { foldCode, normaliseCode } from "../model-code.ts";
import { isOneSlip } from "../one-slip.ts";
import { type CatalogueProblem, parseCatalogue } from "../schema.ts";
import { type Manifest, nearbyPath, readSplit, shardPath } from "./manifest.ts";
import { searchedIn } from "./near-keys.ts";
import { readNearby } from "./nearby.ts";
import { catalogueOf, isCrowded, readShard, type Shard } from "./shard.ts";
import { readTree } from "./shard-tree.ts";

/**
 * Reads one file of a catalogue as JSON, by its path from the manifest's folder on; null where there is none.
 * @throws whatever keeps it from being read
 */
export type ReadFile = (path: string) => Promise<unknown>;

/** Files that are asked for side by side; a browser has no more connections to a server of the older protocol. */
const mostAtOnce = 8;

/** A code of the index that one slip makes of the typed one, and how far it is in tenths of an edit. */
type Found = { key: string; distance: number };

/**
 * A catalogue of many files. A code that is listed takes one request; one that is not takes up to eight more side by
 * side, and those of the models that may be meant. What was read is kept. Answers as `findModel` and `partFor` do of a
 * catalogue in one file, but for codes that are more than one slip away.
 * @param report is told what was wrong in a file
 * @throws whatever `read` throws; it is asked again at the next question
 */
export function createShardedCatalogue(
  { tree, nearby, split }: Manifest,
  read: ReadFile,
  report: (problem: CatalogueProblem) => void = () => {},
) {
  const isSplit = readSplit(split);
  const shardNumber = readTree(tree);
  const known = new Map<string, Promise<unknown>>();
  const fetchOnce = (path: string) => {
    const asked = known.get(path) ?? read(path);
    known.set(path, asked);
    asked.catch(() => known.delete(path));
    return asked;
  };
  const shardOf = async (fold: string) => readShard(await fetchOnce(shardPath(shardNumber(fold))));
  const nearbyOf = async (path: string) => readNearby(await fetchOnce(path));

  /** The models that look like one of these folded codes, as a catalogue of their own. */
  async function catalogueFor(folds: readonly string[]) {
    const read = await Promise.all(
      [...new Set(folds)].map(async (fold) => rowsOf(await shardOf(fold), fold)),
    );
    const { catalogue, problems } = parseCatalogue(catalogueOf(read.flat()));
    for (const problem of problems) report(problem);
    return catalogue;
  }

  async function find(typed: string): Promise<FindResult> {
    const given = normaliseCode(typed);
    if (given.kind === "unreadable") return given;
    const { code } = given;
    const fold = foldCode(code);
    const own = await shardOf(fold);
    const rows = rowsOf(own, fold);
    const goesOn = goingOn(own, fold);
    if (rows.length > 0 && goesOn.all === 0 && !rows.some(({ row }) => isCrowded(row)))
      return findModel(await catalogueFor([fold]), typed);
    const slipsHere = slipsOf(code, fold);
    // A code with an ending is looked for without it, too; where the index takes all there may be, after it.
    if (searchedIn(fold, isSplit).length >= mostAtOnce) await slipsHere;
    const [slips, endings] = await Promise.all([
      slipsHere,
      rows.length > 0 ? { all: 0, keys: [] } : endingsOf(typed),
    ]);
    const ranked = [...new Set([...goesOn.keys, ...endings.keys, ...slips.map(({ key }) => key)])];
    const named = ranked.slice(0, mostCandidates);
    const found = findModel(await catalogueFor([fold, ...named.map(foldCode)]), typed);
    if (found.kind !== "near") return found;
    const all = new Set(slips.map(({ key }) => foldCode(key))).size + goesOn.all + endings.all + rows.length;
    return { ...found, more: Math.max(found.more, all - found.candidates.length) };
  }

  /** Codes of the index that one slip makes of this one, the nearest first. */
  async function slipsOf(code: string, fold: string): Promise<Found[]> {
    const paths = [...new Set(searchedIn(fold, isSplit).map((bucket) => nearbyPath(bucket, nearby)))];
    const keys: string[] = [];
    for (let at = 0; at < paths.length; at += mostAtOnce)
      keys.push(...(await Promise.all(paths.slice(at, at + mostAtOnce).map(nearbyOf))).flat());
    return [...new Set(keys)]
      .filter((key) => isOneSlip(foldCode(key), fold))
      .map((key) => ({ key, distance: codeDistance(code, key) }))
      .sort((a, b) => a.distance - b.distance || (a.key < b.key ? -1 : 1));
  }

  /** Codes that differ from the typed one by their ending only, where the typed one has an ending. */
  async function endingsOf(typed: string): Promise<{ all: number; keys: string[] }> {
    const base = baseOf(typed);
    if (base === null) return { all: 0, keys: [] };
    const fold = foldCode(base);
    const shard = await shardOf(fold);
    const whole = rowsOf(shard, fold).length > 0 ? [base] : [];
    const { all, keys } = goingOn(shard, fold);
    return { all: all + whole.length, keys: [...whole, ...keys] };
  }

  return {
    findModel: find,
    /** @param code the code of a model as `findModel` gave it, never what was typed */
    async partFor(code: string, kind: string, plate?: Plate): Promise<FitResult> {
      const read = normaliseCode(code);
      if (read.kind === "unreadable") return { kind: "unknown-model" };
      return partFor(await catalogueFor([foldCode(read.code)]), code, kind, plate);
    },
  };
}

/** The rows of a shard whose code looks like this folded one, twins and all. */
const rowsOf = (shard: Shard, fold: string) =>
  shard.models.flatMap((row) => (foldCode(keyOf(row)) === fold ? [{ shard, row }] : []));

/** The codes that go on where this folded one ends. */
function goingOn(shard: Shard, fold: string): { all: number; keys: string[] } {
  const here = shard.models
    .filter(([code]) => typeof code === "string" && foldCode(baseOf(code) ?? "") === fold)
    .map(keyOf);
  const { all = 0, keys = [] } = shard.endings.get(fold) ?? {};
  return { all: all + here.length, keys: [...here, ...keys] };
}

function keyOf([code]: readonly unknown[]): string {
  const read = typeof code === "string" ? normaliseCode(code) : null;
  return read?.kind === "code" ? read.code : "";
}
