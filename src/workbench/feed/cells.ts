import { bounds, plainText } from "../../catalogue/index.ts";
import type { ColumnName, Columns } from "./columns.ts";
import { type FeedFault, type FeedProblem, type Place, shorten } from "./problem.ts";
import type { RowPlace } from "./row.ts";

/** Longest texts that a catalogue takes, as in its schema. */
export const longestName: number = bounds.name;
export const longestLabel: number = bounds.label;

/** The row at hand by the names of its columns; it tells problems with their place. */
export type Cells = {
  line: number;
  /** As written; empty where the feed does not have the column. */
  raw(column: ColumnName): string;
  placeOf(column: ColumnName): Place;
  problem(code: FeedFault, column: ColumnName, message: string): void;
};

/** Cells of whatever row is handed over last, so that nothing is made anew for each of millions. */
export function createCells(
  tell: (problem: FeedProblem) => void,
): Cells & { move(fields: readonly string[], columns: Columns, at: RowPlace): void } {
  let fields: readonly string[] = [];
  let columns: Columns = new Map();
  let at: RowPlace = { line: 1, placeOf: () => ({ line: 1, column: 1 }) };
  const cells = {
    get line() {
      return at.line;
    },
    raw: (column: ColumnName) => fields[columns.get(column) ?? -1] ?? "",
    placeOf: (column: ColumnName) => at.placeOf(columns.get(column) ?? 0),
    problem(code: FeedFault, column: ColumnName, message: string) {
      const found = shorten(plainText(cells.raw(column)));
      tell({ code, ...cells.placeOf(column), ...(found ? { found } : {}), message });
    },
    move(row: readonly string[], of: Columns, place: RowPlace) {
      fields = row;
      columns = of;
      at = place;
    },
  };
  return cells;
}

// Tabs and line ends are what a quoted field may hold; all others come from a broken export.
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const control = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F]/;

/**
 * A cell as one printable line, or null where it cannot be trusted, which is told. U+FFFD is what is left of bytes
 * that are no UTF-8.
 */
export function readText(cells: Cells, column: ColumnName): string | null {
  const raw = cells.raw(column);
  if (raw.includes("\uFFFD")) {
    cells.problem("bad-encoding", column, `"${column}" holds characters that cannot be read. Save as UTF-8.`);
    return null;
  }
  if (control.test(raw)) {
    cells.problem("control-character", column, `"${column}" holds a control character. Leave it out.`);
    return null;
  }
  return plainText(raw);
}

/** The same for a text that must be there, and no longer than a label. */
export function readLabel(cells: Cells, column: ColumnName, fault: FeedFault): string | null {
  const text = readText(cells, column);
  if (text === null) return null;
  if (text === "") {
    cells.problem("empty-field", column, `"${column}" is empty.`);
    return null;
  }
  if (text.length <= longestLabel) return text;
  cells.problem(fault, column, `"${column}" is longer than ${longestLabel} characters.`);
  return null;
}

const slugForm = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Whether a text has the form of a kind of part or machine: small letters and digits, joined by hyphens. */
export function isSlug(text: string): boolean {
  return text.length <= longestLabel && slugForm.test(text);
}

/** How a text would have to be written as a kind; empty where nothing is left of it. */
export function slugOf(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, longestLabel);
}

/**
 * The text with memory of its own. A piece cut from a text keeps the whole text alive, here a megabyte of feed; only
 * joining copies.
 */
export function ownCopy(text: string): string {
  return text.length < 13 ? text : [text.slice(0, 1), text.slice(1)].join("");
}
