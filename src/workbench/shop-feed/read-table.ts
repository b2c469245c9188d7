import { decodeHTMLStrict } from "entities";
import { createCsvReader, UnusableFeed } from "../feed/index.ts";
import { shopFeedBounds } from "./bounds.ts";
import { readJsonTable } from "./read-json.ts";
import { readXmlTable } from "./read-xml.ts";
import type { BadRow, Table, TableRow } from "./table.ts";

/**
 * A shop's file as rows and columns. The format is told by its first sign: `<` begins XML, `[` or `{` JSON, all else is
 * a heading line.
 * @param mark what stands between fields, where somebody has said it
 * @throws UnusableFeed where there are no rows to be found, or too many
 */
export function readTable(text: string, mark?: string): Table {
  const first = /[^\s\uFEFF]/.exec(text.slice(0, 10_000))?.[0];
  if (first === undefined) throw new UnusableFeed("This feed is empty");
  const table =
    first === "<"
      ? readXmlTable(text)
      : first === "[" || first === "{"
        ? readJsonTable(text)
        : readCsvTable(text, mark);
  if (table.rows.length + table.bad.length === 0)
    throw new UnusableFeed("This feed has a heading and no rows");
  if (table.headings.length > shopFeedBounds.columns)
    throw new UnusableFeed(`This feed has more than ${shopFeedBounds.columns} columns`);
  return table;
}

function readCsvTable(text: string, given?: string): Table {
  const start = text.replace(/^\uFEFF/, "");
  // Some spreadsheets write what stands between fields into a line of its own before the heading.
  const told = /^sep=(.)\r?\n/.exec(start)?.[1];
  const mark = given ?? told ?? markOf(start);
  const skipped = told === undefined ? 0 : 1;
  const rows: TableRow[] = [];
  const bad: BadRow[] = [];
  let headings: string[] | null = null;
  const reader = createCsvReader(
    {
      row(fields, at) {
        if (headings === null) headings = fields.map((field) => field.trim());
        else if (fields.some((field) => field.trim() !== ""))
          rows.push({ line: at.line + skipped, cells: fields.map(decodeCell) });
        checkRows(rows.length);
      },
      problem: ({ line, message }) => bad.push({ line: line + skipped, message }),
    },
    mark,
  );
  const body = skipped ? start.slice(start.indexOf("\n") + 1) : start;
  reader.push(mark === ";" ? hideEntityEnds(body) : body);
  reader.end();
  return { format: "csv", mark, headings: headings ?? [], rows, bad };
}

/** Stands for the semicolon of an entity, where a semicolon parts fields; no text has this character of private use. */
const entityEnd = "\uE000";

function hideEntityEnds(text: string): string {
  return text.replace(/&(?:#\d{1,7}|#x[\da-f]{1,6}|[a-z][a-z\d]{1,30});/gi, (entity) =>
    decodeHTMLStrict(entity) === entity ? entity : `${entity.slice(0, -1)}${entityEnd}`,
  );
}

const decodeCell = (cell: string) =>
  cell.includes("&") ? decodeHTMLStrict(cell.replaceAll(entityEnd, ";")) : cell;

/** @throws UnusableFeed where a feed has too many rows */
export function checkRows(count: number): void {
  if (count > shopFeedBounds.rows)
    throw new UnusableFeed(`This feed has more than ${shopFeedBounds.rows} rows`);
}

/** What stands most often in the heading line, outside of quotes. */
function markOf(text: string): string {
  const heading = /^[^\r\n]*/.exec(text.trimStart())?.[0] ?? "";
  const outside = heading.replace(/"[^"]*"/g, "");
  const [best = ","] = [",", ";", "\t", "|"].sort(
    (a, b) => outside.split(b).length - outside.split(a).length,
  );
  return best;
}
