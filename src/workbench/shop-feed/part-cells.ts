import { plainText } from "../../catalogue/index.ts";
import type { ColumnName } from "../feed/index.ts";
import type { FileMapping } from "./mapping.ts";
import type { Table, TableRow } from "./table.ts";

/** Reads a row by the fields of a feed. */
export type RowReader = (row: TableRow, column: ColumnName) => string;

/** Which of a mapping's headings a table does not have, and a reader of what it has. */
export function readerOf(table: Table, { columns }: FileMapping): { read: RowReader; missing: string[] } {
  const places = new Map<ColumnName, number>();
  const missing: string[] = [];
  for (const [column, heading] of Object.entries(columns)) {
    if (heading === undefined) continue;
    const at = table.headings.indexOf(heading);
    if (at < 0) missing.push(heading);
    else places.set(column as ColumnName, at);
  }
  return { read: (row, column) => row.cells[places.get(column) ?? -1]?.trim() ?? "", missing };
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const control = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F]/;

/** A cell as one printable line, or why it cannot be read. @param what for the message, with its article */
export function readLine(cell: string, what: string): { text: string } | { fault: string } {
  if (cell.includes("\uFFFD"))
    return { fault: `${what} holds characters that cannot be read. Say --encoding.` };
  if (control.test(cell)) return { fault: `${what} holds a control character.` };
  return { text: plainText(cell.replace(/\s+/g, " ")) };
}
