import { type ColumnName, columnNames } from "../feed/index.ts";
import { cellsOf } from "./contents.ts";
import { guessKinds, type KindGuess, kindsOf } from "./guess-kinds.ts";
import { fitmentColumns, guessColumns, type LeftColumn, type Taken } from "./headings.ts";
import type { FileMapping, Mapping } from "./mapping.ts";
import { findSplit, type Split, saySplit } from "./models-split.ts";
import { decimalOf, readMoney } from "./money.ts";
import { type RowReader, readerOf } from "./part-cells.ts";
import type { Table } from "./table.ts";
import type { ShopTables } from "./understand.ts";

/** What somebody has said on the command line; it goes over what is guessed, and over a mapping. */
export type Said = Pick<Mapping, "encoding" | "currency" | "base" | "modelsSplit" | "kinds"> & {
  columns?: Mapping["columns"];
};

/** A mapping with what was said in the place of what it has; of kinds and columns, one by one. */
export function withSaid(mapping: Mapping, said: Said): Mapping {
  const { kinds, columns, ...others } = said;
  return {
    ...mapping,
    ...others,
    ...(kinds ? { kinds: { ...mapping.kinds, ...kinds } } : {}),
    columns: { ...mapping.columns, ...columns },
  };
}

/** What was taken of a file's columns, and what was not. */
export type FileGuess = { taken: readonly Taken[]; left: readonly LeftColumn[] };

/** A mapping as it seems to be, why, and what has to be said before a build can use it. */
export type Guess = {
  mapping: Mapping;
  parts: FileGuess;
  fitments?: FileGuess;
  split: Split;
  kinds: readonly KindGuess[];
  needs: readonly string[];
};

/** Makes a mapping by looking at headings and at what stands below them. @param kinds of the trade */
export function guessMapping({ parts, fitments }: ShopTables, said: Said, kinds: readonly string[]): Guess {
  const own = guessColumns(parts);
  const second = fitments && guessColumns(fitments, fitmentColumns);
  const mapping = withSaid(fileMapping(parts, own.taken, Boolean(fitments)), said);
  if (fitments && second) mapping.fitments = fileMapping(fitments, second.taken, false);
  const { read } = readerOf(parts, mapping);
  const prices = cellsIn(parts, mapping, "price");
  const decimal = decimalOf(prices);
  if (decimal) mapping.decimal = decimal;
  const told = mapping.columns.kind === undefined ? [] : guessKinds(wordsAndNames(parts, read), kinds);
  if (told.length > 0) mapping.kinds = { ...kindsOf(told), ...said.kinds };
  const fits =
    fitments && mapping.fitments ? { table: fitments, by: mapping.fitments } : { table: parts, by: mapping };
  const split = findSplit(cellsIn(fits.table, fits.by, "model"));
  if (mapping.modelsSplit === undefined && "signs" in split) mapping.modelsSplit = saySplit(split.signs);
  const needs = [
    ...lacking(
      mapping.columns,
      ["number", "name", "price", ...(fitments ? [] : ["model" as const])],
      "the feed",
    ),
    ...(mapping.fitments
      ? lacking(mapping.fitments.columns, ["number", "model"], "the file of fitments")
      : []),
    ...(mapping.modelsSplit === undefined && "unsure" in split
      ? [`Say what parts the models, with --models-split. ${split.unsure}`]
      : []),
    ...needOfCurrency(prices, mapping),
  ];
  return {
    mapping,
    parts: own,
    ...(second ? { fitments: second } : {}),
    split,
    kinds: told,
    needs,
  };
}

/** Where a second file says what fits, that is no business of the first. */
function fileMapping({ mark }: Table, taken: readonly Taken[], isOfParts: boolean): FileMapping {
  const others = isOfParts ? ["model", "brand", "machine", "variant", "serial-from", "serial-to"] : [];
  const own = new Map(taken.map(({ column, heading }) => [column, heading]));
  const columns = Object.fromEntries(
    columnNames.flatMap((name) => (own.has(name) && !others.includes(name) ? [[name, own.get(name)]] : [])),
  );
  const delimiter = [",", ";", "\t", "|"].find((one) => one === mark) as FileMapping["delimiter"];
  return { columns, ...(delimiter ? { delimiter } : {}) };
}

function cellsIn(table: Table, { columns }: FileMapping, column: ColumnName): string[] {
  const heading = columns[column];
  return heading === undefined ? [] : cellsOf(table, table.headings.indexOf(heading));
}

const wordsAndNames = (table: Table, read: RowReader) =>
  table.rows.map((row) => ({ word: read(row, "kind"), name: read(row, "name") }));

function lacking(columns: Mapping["columns"], needed: readonly ColumnName[], of: string): string[] {
  return needed
    .filter((column) => columns[column] === undefined)
    .map((column) => `No column of ${of} was found to be the "${column}". Name its heading in the mapping.`);
}

function needOfCurrency(prices: readonly string[], { columns, currency, decimal }: Mapping): string[] {
  if (currency !== undefined || columns.currency !== undefined) return [];
  const faults = prices.flatMap((cell) => {
    const money = readMoney(cell, decimal ?? null, "");
    return "fault" in money && money.fault.includes("--currency") ? [money.fault] : [];
  });
  return faults.length * 2 > prices.length && faults[0] ? [faults[0]] : [];
}
