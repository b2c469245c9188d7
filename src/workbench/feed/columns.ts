/** What a feed can say of a part that fits a model, in the order in which JSON lines are laid out. */
export const columnNames = [
  "brand",
  "model",
  "machine",
  "variant",
  "serial-from",
  "serial-to",
  "kind",
  "number",
  "name",
  "price",
  "currency",
  "stock",
  "link",
  "picture",
  "replaces",
  "replaced-by",
  "origin",
  "minutes",
] as const;

export type ColumnName = (typeof columnNames)[number];

/** Columns that no feed can do without. */
export const requiredColumns: readonly ColumnName[] = [
  "model",
  "kind",
  "number",
  "name",
  "price",
  "currency",
];

/** The retailer's own heading of some columns. */
export type OwnHeadings = ReadonlyMap<ColumnName, string>;

/** Where each column stands in a row; a column that the feed does not have is missing. */
export type Columns = ReadonlyMap<ColumnName, number>;

/** A heading as it is compared: case, blanks, underscores and hyphens do not count. */
const plainHeading = (heading: string) => heading.toLowerCase().replace(/[\s_-]+/g, "");

/** Finds which column a heading means; a column with an own heading is no longer found by its usual name. */
export function createHeadings(own: OwnHeadings = new Map()): (heading: string) => ColumnName | undefined {
  const byHeading = new Map<string, ColumnName>();
  for (const name of columnNames) if (!own.has(name)) byHeading.set(plainHeading(name), name);
  for (const [name, heading] of own) byHeading.set(plainHeading(heading), name);
  return (heading) => byHeading.get(plainHeading(heading));
}

/**
 * Reads own headings as they are written on a command line: `number=SKU,model=Modell`.
 * @returns the headings, or a sentence that says what cannot be used
 */
export function readOwnHeadings(written: string): OwnHeadings | string {
  const own = new Map<ColumnName, string>();
  for (const pair of written.split(",")) {
    const [name = "", ...rest] = pair.split("=");
    const column = columnNames.find((one) => plainHeading(one) === plainHeading(name));
    const heading = rest.join("=").trim();
    if (!column) return `There is no column "${name.trim()}". There are: ${columnNames.join(", ")}`;
    if (plainHeading(heading) === "") return `Say which heading means "${column}": ${column}=Heading`;
    own.set(column, heading);
  }
  return own;
}
