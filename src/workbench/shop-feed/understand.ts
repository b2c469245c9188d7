import { type ColumnName, UnusableFeed } from "../feed/index.ts";
import { shopFeedBounds } from "./bounds.ts";
import { createLosses, type Loss, type Losses } from "./losses.ts";
import type { Mapping } from "./mapping.ts";
import { faultOfModel, findLostZeros } from "./model-codes.ts";
import { findSplit, readSplit, type SplitSign, splitCell } from "./models-split.ts";
import { type RowReader, readerOf } from "./part-cells.ts";
import { type PartFault, readNumber, readShopPart, type ShopPart } from "./read-part.ts";
import type { Table, TableRow } from "./table.ts";

/** A shop's files: one with a row a part and its models, or one of parts and one of what fits. */
export type ShopTables = { parts: Table; fitments?: Table };

/** A part and the models that it fits, one at least, with what the row says of these machines. */
export type ShopFitments = {
  line: number;
  part: ShopPart;
  models: readonly string[];
  brand: string;
  machine: string;
  variant: string;
  "serial-from": string;
  "serial-to": string;
};

/** How many rows of a file could be used, and why the others could not. */
export type RowShare = { read: number; used: number; losses: readonly Loss[] };

/** What became of each file's rows. */
export type Understood = { parts: RowShare; fitments?: RowShare };

/**
 * Reads a shop's files by a mapping. A part may stand in several rows: the first that is whole tells of it, and the
 * models of all of them count.
 * @param kinds of the trade
 * @param enter is handed what fits, row by row
 * @throws UnusableFeed where the mapping does not go with the files, or where it is unclear what parts the models
 */
export function understand(
  { parts, fitments }: ShopTables,
  mapping: Mapping,
  kinds: readonly string[],
  enter: (row: ShopFitments) => void,
): Understood {
  const losses = createLosses();
  for (const { line, message } of parts.bad) losses.add("row", message, line);
  const { read } = checked(parts, mapping, fitments ? partColumns : [...partColumns, "model"], "the parts");
  const known = readParts(parts, read, mapping, kinds, losses);
  const readRows = parts.rows.length + parts.bad.length;
  if (!fitments) {
    const used = enterRows(parts, read, mapping, known, losses, enter);
    return { parts: { read: readRows, used, losses: losses.all } };
  }
  const usable = parts.rows.filter((row, at) => {
    const fault = known.faults.get(at);
    if (fault && !known.partOf(row, read)) losses.add("row", fault.fault, row.line, fault.found);
    return !fault || known.partOf(row, read);
  });
  const own = createLosses();
  for (const { line, message } of fitments.bad) own.add("row", message, line);
  const second = checked(fitments, mapping.fitments ?? { columns: {} }, ["number", "model"], "the fitments");
  const used = enterRows(fitments, second.read, mapping, { ...known, faults: new Map() }, own, enter);
  return {
    parts: { read: readRows, used: usable.length, losses: losses.all },
    fitments: { read: fitments.rows.length + fitments.bad.length, used, losses: own.all },
  };
}

const partColumns: readonly ColumnName[] = ["number", "name", "price"];

function checked(
  table: Table,
  mapping: Mapping | NonNullable<Mapping["fitments"]>,
  needed: readonly ColumnName[],
  of: string,
) {
  const lacking = needed.filter((column) => mapping.columns[column] === undefined);
  if (lacking.length > 0)
    throw new UnusableFeed(
      `The mapping has no ${lacking.join(", no ")} for ${of}. Name the heading in its columns`,
    );
  const reader = readerOf(table, mapping);
  if (reader.missing.length > 0)
    throw new UnusableFeed(
      `The file of ${of} has no heading "${reader.missing[0]}". It has: ${table.headings.join(", ").slice(0, 400)}`,
    );
  return reader;
}

type Known = { faults: Map<number, PartFault>; partOf(row: TableRow, read: RowReader): ShopPart | undefined };

function readParts(
  table: Table,
  read: RowReader,
  mapping: Mapping,
  kinds: readonly string[],
  losses: Losses,
): Known {
  const byNumber = new Map<string, ShopPart>();
  const faults = new Map<number, PartFault>();
  for (const [at, row] of table.rows.entries()) {
    const part = readShopPart(row, read, mapping, kinds, losses);
    if ("fault" in part) faults.set(at, part);
    else compare(byNumber, part, losses);
  }
  for (const number of findLostZeros([...byNumber.keys()]))
    losses.add(
      "note",
      "This part number is shorter than the others: a spreadsheet has probably cut off zeros in front. Export it as text.",
      byNumber.get(number)?.line ?? 1,
      number,
    );
  return {
    faults,
    partOf(row, by) {
      const number = readNumber(row, by);
      return "number" in number ? byNumber.get(number.number) : undefined;
    },
  };
}

function compare(byNumber: Map<string, ShopPart>, part: ShopPart, losses: Losses): void {
  const first = byNumber.get(part.number);
  if (!first) {
    byNumber.set(part.number, part);
    return;
  }
  const other = (["kind", "price", "currency", "name", "stock"] as const).find(
    (key) => first[key] !== part[key],
  );
  if (other)
    losses.add(
      "note",
      `An earlier row of this part has another ${other}; the earlier one counts.`,
      part.line,
      part.number,
    );
}

/** @returns how many rows gave a fitment */
function enterRows(
  table: Table,
  read: RowReader,
  mapping: Mapping,
  known: Known,
  losses: Losses,
  enter: (row: ShopFitments) => void,
): number {
  const signs = splitOf(table, read, mapping);
  const faultOf = createModelJudge();
  let used = 0;
  for (const [at, row] of table.rows.entries()) {
    const part = known.partOf(row, read);
    if (!part) {
      const { fault, found } = known.faults.get(at) ?? strange(row, read);
      losses.add("row", fault, row.line, found);
      continue;
    }
    if (enterRow(row, read, part, { signs, faultOf }, losses, enter)) used++;
  }
  return used;
}

type ModelReader = { signs: readonly SplitSign[]; faultOf: (piece: string) => string | null };

/** A model stands in many rows, and is judged once. */
function createModelJudge(): ModelReader["faultOf"] {
  const faults = new Map<string, string | null>();
  return (piece) => {
    let fault = faults.get(piece);
    if (fault === undefined) {
      fault = faultOfModel(piece);
      faults.set(piece, fault);
    }
    return fault;
  };
}

function strange(row: TableRow, read: RowReader): PartFault {
  const number = readNumber(row, read);
  if ("fault" in number) return number;
  return { fault: "No part that can be used has this number.", found: number.number };
}

function enterRow(
  row: TableRow,
  read: RowReader,
  part: ShopPart,
  { signs, faultOf }: ModelReader,
  losses: Losses,
  enter: (row: ShopFitments) => void,
): boolean {
  const pieces = splitCell(read(row, "model"), signs);
  if (pieces.length === 0) losses.add("row", "No model is named.", row.line, part.number);
  if (pieces.length > shopFeedBounds.modelsOfCell) {
    losses.add(
      "row",
      `More than ${shopFeedBounds.modelsOfCell} models stand in one cell.`,
      row.line,
      part.number,
    );
    return false;
  }
  const models = pieces.filter((model) => {
    const fault = faultOf(model);
    if (fault) losses.add("model", fault, row.line, model);
    return !fault;
  });
  if (pieces.length > 0 && models.length === 0)
    losses.add("row", "None of its models can be used.", row.line, part.number);
  if (models.length > 0) enter({ part, models, ...machineOf(row, read) });
  return models.length > 0;
}

/** What a row says of its machine, whichever its model. */
function machineOf(row: TableRow, read: RowReader): Omit<ShopFitments, "part" | "models"> {
  return {
    line: row.line,
    brand: read(row, "brand"),
    machine: read(row, "machine")
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-"),
    variant: read(row, "variant"),
    "serial-from": read(row, "serial-from"),
    "serial-to": read(row, "serial-to"),
  };
}

/** The signs that the mapping says, or that the column tells. @throws UnusableFeed where it is unsure */
export function splitOf(table: Table, read: RowReader, mapping: Mapping): readonly SplitSign[] {
  if (mapping.modelsSplit !== undefined) {
    const said = readSplit(mapping.modelsSplit);
    if (said) return said;
    throw new UnusableFeed(`"${mapping.modelsSplit}" cannot part models. ${splitHelp}`);
  }
  const split = findSplit(table.rows.map((row) => read(row, "model")));
  if ("signs" in split) return split.signs;
  throw new UnusableFeed(`It is unclear what parts the models of a cell. ${split.unsure} ${splitHelp}`);
}

const splitHelp =
  'Say it with --models-split: "," or ";" or "/" or "|" or "newline", several of them together, or "none" for one model a cell';
