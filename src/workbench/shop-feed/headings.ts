import { type ColumnName, columnNames } from "../feed/index.ts";
import { findContentFault } from "./contents.ts";
import { folded } from "./folded.ts";
import type { Table } from "./table.ts";
import { allWords, type ShopWords } from "./words/index.ts";

/** A column of a shop's file, what it was taken for, and why. */
export type Taken = { column: ColumnName; heading: string; why: string };
/** A column that was taken for nothing; `why` is empty where its heading means nothing here. */
export type LeftColumn = { heading: string; why: string };

/** A heading as it is compared: `g:imageLink` and `Image-Link` are `image link`. */
export function plainHeading(heading: string): string {
  const parted = heading
    .normalize("NFKC")
    .replace(/(^|\s)[\w-]+:(?=\w)/g, "$1")
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2");
  return folded(parted)
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}

/** Fields of a file that says what fits. */
export const fitmentColumns: readonly ColumnName[] = [
  ...(["number", "model", "brand", "machine", "variant", "serial-from", "serial-to"] as const),
];

/** In such a file a brand is the machine's. In one of parts it may be the part's, and is not taken. */
const brandWords = ["brand", "marke", "marque", "manufacturer", "hersteller", "fabricant"];

type Candidate = { column: ColumnName; at: number; score: number };

/**
 * Finds what each column of a file means: by its heading, and what stands in it must go with that.
 * @param wanted fields that the file may have
 */
export function guessColumns(
  table: Table,
  wanted: readonly ColumnName[] = columnNames,
): { taken: Taken[]; left: LeftColumn[] } {
  const why = new Map<number, string>();
  const candidates = table.headings.flatMap((heading, at) =>
    wanted.flatMap((column): Candidate[] => {
      const score = scoreOf(plainHeading(heading), column, wanted === fitmentColumns);
      return score > 0 ? [{ column, at, score }] : [];
    }),
  );
  candidates.sort((a, b) => b.score - a.score);
  const taken = new Map<ColumnName, { at: number; why: string }>();
  for (const { column, at, score } of candidates) {
    if (taken.has(column) || [...taken.values()].some((one) => one.at === at)) continue;
    const meanings = lookAlike(table.headings, at, wanted);
    if (meanings) {
      why.set(at, `is the word for ${meanings.join(" and for ")} in two languages. Name it with --columns`);
      continue;
    }
    const fault = findContentFault(table, at, column);
    if (fault) why.set(at, `looks like "${column}" by its heading, but ${fault}`);
    else taken.set(column, { at, why: score >= exact ? "by its heading" : "by a word of its heading" });
  }
  const used = new Set([...taken.values()].map(({ at }) => at));
  return {
    taken: [...taken]
      .sort(([, a], [, b]) => a.at - b.at)
      .map(([column, { at, why }]) => ({ column, heading: table.headings[at] ?? "", why })),
    left: table.headings.flatMap((heading, at) =>
      used.has(at) || heading === "" ? [] : [{ heading, why: why.get(at) ?? whyLeft(heading, wanted) }],
    ),
  };
}

const meansIn = (heading: string, { headings }: ShopWords, wanted: readonly ColumnName[]) =>
  wanted.find((column) => headings[column]?.some((name) => folded(name) === heading));

/**
 * The columns that a heading means in several languages, as 'nombre' does, where the feed's other headings speak none of
 * these languages more than the other.
 */
function lookAlike(headings: readonly string[], at: number, wanted: readonly ColumnName[]) {
  const plain = headings.map(plainHeading);
  const readings = allWords.flatMap((words) => {
    const column = meansIn(plain[at] ?? "", words, wanted);
    const spoken = plain.filter((other, place) => place !== at && meansIn(other, words, wanted)).length;
    return column ? [{ column, spoken }] : [];
  });
  const most = Math.max(...readings.map(({ spoken }) => spoken));
  const meanings = new Set(readings.filter(({ spoken }) => spoken === most).map(({ column }) => column));
  return meanings.size > 1 ? [...meanings] : null;
}

const exact = 1000;

function scoreOf(heading: string, column: ColumnName, isOfFitments: boolean): number {
  let best = 0;
  for (const { headings, spoilers } of allWords) {
    const own = headings[column] ?? [];
    const names =
      column !== "brand" ? [column.replace("-", " "), ...own] : isOfFitments ? [...brandWords, ...own] : own;
    const words = heading.split(" ");
    for (const [place, written] of names.entries()) {
      const name = folded(written);
      if (heading === name) best = Math.max(best, 2 * exact - place);
      else if (` ${heading} `.includes(` ${name} `) && name.length > 2)
        best = Math.max(best, exact / 2 - place);
    }
    if (
      words.length > 1 &&
      best < exact &&
      spoilers[column]?.some((spoiler) => words.includes(folded(spoiler)))
    )
      return 0;
  }
  return best;
}

function whyLeft(heading: string, wanted: readonly ColumnName[]): string {
  const isBrand = brandWords.includes(plainHeading(heading)) && wanted !== fitmentColumns;
  return isBrand
    ? "may be the part's brand and not the machine's. If it is the machine's, name it as \"brand\""
    : "";
}
