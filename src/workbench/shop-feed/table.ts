/** A row as a shop's file has it. `line` is where it starts, from 1; cells as written, entities decoded. */
export type TableRow = { line: number; cells: readonly string[] };

/** Rows that could not be read, each with its reason. */
export type BadRow = { line: number; message: string };

/** A shop's file, whatever its format. `mark` stands between the fields of a text file. */
export type Table = {
  format: "csv" | "json" | "xml";
  mark?: string;
  headings: readonly string[];
  rows: readonly TableRow[];
  bad: readonly BadRow[];
};
