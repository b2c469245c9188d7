import type { ColumnName } from "../feed/index.ts";
import { readMoney } from "./money.ts";
import type { Table } from "./table.ts";

/** Rows that are looked at to tell what a column holds; a feed is rarely sorted by how its cells are written. */
const looked = 3000;

/** What stands in a column, the empty cells left out. @param most rows that are looked at, from all over the file */
export function cellsOf(table: Table, at: number, most: number = Number.POSITIVE_INFINITY): string[] {
  const step = Math.max(1, Math.floor(table.rows.length / most));
  const cells: string[] = [];
  for (let row = 0; row < table.rows.length; row += step) {
    const cell = table.rows[row]?.cells[at]?.trim();
    if (cell) cells.push(cell);
  }
  return cells;
}

const forms: Partial<Record<ColumnName, { is(cell: string): boolean; what: string }>> = {
  price: {
    is: (cell) => !("fault" in readMoney(cell, "dot", "")) || /^\D{0,4}\d[\d.,'’\s]*\D{0,5}$/.test(cell),
    what: "few of its cells are prices",
  },
  link: {
    is: (cell) => /^(https?:|\/)|[./]/.test(cell) && !/\s/.test(cell),
    what: "few of its cells are addresses",
  },
  picture: { is: (cell) => /[./]/.test(cell) && !/\s/.test(cell), what: "few of its cells are addresses" },
  currency: { is: (cell) => /^([A-Za-z]{3}|[€£$])$/.test(cell), what: "few of its cells are currencies" },
  model: { is: (cell) => /\d/.test(cell), what: "few of its cells have a digit" },
  minutes: { is: (cell) => /^\d+$/.test(cell), what: "few of its cells are numbers" },
  name: { is: (cell) => /\p{L}{2}/u.test(cell), what: "few of its cells are words" },
};

/** Why a column cannot be what its heading says, or null. */
export function findContentFault(table: Table, at: number, column: ColumnName): string | null {
  const cells = cellsOf(table, at, looked);
  if (cells.length === 0) return "it is empty";
  const form = forms[column];
  if (form && cells.filter(form.is).length < cells.length * 0.6) return form.what;
  return null;
}
