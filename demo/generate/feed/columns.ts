/** The columns of the feed, in their order: what tells the model, what else must stand on its plate, and the part. */
export const modelColumns = ["brand", "model", "machine"] as const;
export const plateColumns = ["variant", "serial-from", "serial-to"] as const;
export const partColumns = [
  ...["kind", "number", "name", "price", "currency", "stock", "link", "picture"],
  ...["replaces", "replaced-by", "origin", "minutes"],
] as const;
export const columns: readonly string[] = [...modelColumns, ...plateColumns, ...partColumns];

/** Cells by column; what is not there is empty. */
export type Cells = Partial<Record<string, string>>;

/**
 * A way of writing rows. A row is put together from three groups of cells, so that those of a part, which thousands of
 * rows share, are written once.
 */
export type Writer = {
  header: string;
  group(cells: Cells, columns: readonly string[]): string;
  row(model: string, plate: string, part: string): string;
};

/** RFC 4180: lines end in CRLF, a field with a comma, a quote or a line end is quoted, a quote in it doubled. */
export const csv: Writer = {
  header: `${columns.join(",")}\r\n`,
  group: (cells, names) => names.map((name) => field(cells[name] ?? "")).join(","),
  row: (model, plate, part) => `${model},${plate},${part}\r\n`,
};

const field = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/** One JSON object (RFC 8259) a line; empty cells are left out. */
export const jsonLines: Writer = {
  header: "",
  group: (cells, names) =>
    names
      .flatMap((name) => (cells[name] ? `${JSON.stringify(name)}:${JSON.stringify(cells[name])}` : []))
      .join(","),
  row: (model, plate, part) => `{${model}${plate && `,${plate}`},${part}}\n`,
};
