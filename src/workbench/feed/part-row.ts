import type { SoldPart } from "../../catalogue/index.ts";
import { minorDigits, plainText, safeLink } from "../../catalogue/index.ts";
import { type Cells, isSlug, longestName, readLabel, readText, slugOf } from "./cells.ts";
import { readPrice } from "./price.ts";

/** Columns that tell of the part alone and so must be the same in all of its rows. */
export const partColumns = [
  "kind",
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

/**
 * Reads what a row says of its part, and tells each thing that is wrong with it.
 * @param few up to how many pieces in stock count as few
 * @returns null where the row cannot be used
 */
export function readPart(cells: Cells, few: number): SoldPart | null {
  const number = readLabel(cells, "number", "bad-number");
  const kind = readKind(cells);
  const name = readName(cells);
  const price = readMoney(cells);
  if (number === null || kind === null || name === null || price === null) return null;
  const part: SoldPart = { number, kind, name, price, stock: readStock(cells, few) };
  for (const column of ["link", "picture"] as const) {
    const written = cells.raw(column).trim();
    const safe = safeLink(written);
    if (safe) part[column] = safe;
    else if (written !== "")
      cells.problem(
        "unsafe-link",
        column,
        `"${column}" is no plain http or https address, so it is left out.`,
      );
  }
  const origin = cells.raw("origin").trim().toLowerCase();
  if (origin === "original" || origin === "compatible") part.origin = origin;
  else if (origin !== "")
    cells.problem("bad-origin", "origin", 'Write "original" or "compatible"; it is left out.');
  const minutes = cells.raw("minutes").trim();
  if (/^\d{1,6}$/.test(minutes)) part.effortMinutes = Number(minutes);
  else if (minutes !== "")
    cells.problem("bad-minutes", "minutes", "Write the minutes as a whole number; they are left out.");
  return part;
}

function readKind(cells: Cells): string | null {
  const kind = readLabel(cells, "kind", "bad-kind");
  if (kind === null || isSlug(kind)) return kind;
  const slug = slugOf(kind);
  const hint = slug ? `Write it as "${slug}"` : "Write small letters and digits, joined by hyphens";
  cells.problem("bad-kind", "kind", `The kind "${kind}" cannot be used. ${hint}.`);
  return null;
}

function readName(cells: Cells): string | null {
  const name = readText(cells, "name");
  if (name === "") cells.problem("empty-field", "name", '"name" is empty.');
  if (!name) return null;
  if (name.length <= longestName) return name;
  cells.problem("name-cut", "name", `The name is longer than ${longestName} characters and was cut.`);
  return plainText(name.slice(0, longestName));
}

let currencies: ReadonlySet<string> | undefined;
const isCurrency = (currency: string) => {
  currencies ??= new Set(Intl.supportedValuesOf("currency"));
  return currencies.has(currency);
};

function readMoney(cells: Cells): SoldPart["price"] | null {
  const currency = cells.raw("currency").trim().toUpperCase();
  if (!isCurrency(currency)) {
    cells.problem("bad-currency", "currency", "Write the three letters of ISO 4217, such as EUR or GBP.");
    return null;
  }
  const read = readPrice(cells.raw("price"), minorDigits(currency));
  if ("minor" in read) return { minor: read.minor, currency };
  cells.problem("bad-price", "price", read.fault);
  return null;
}

/** A feed that says nothing of stock lists what it sells; one that says something else must not promise anything. */
function readStock(cells: Cells, few: number): SoldPart["stock"] {
  const written = cells
    .raw("stock")
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, "-");
  if (written === "") return "in-stock";
  if (written === "in-stock" || written === "few" || written === "out-of-stock") return written;
  if (/^[-+]?\d{1,9}([.,]0+)?$/.test(written)) {
    const pieces = Number.parseInt(written, 10);
    if (pieces <= 0) return "out-of-stock";
    return pieces <= few ? "few" : "in-stock";
  }
  cells.problem(
    "bad-stock",
    "stock",
    'Write "in-stock", "few", "out-of-stock" or a number; this counts as out of stock.',
  );
  return "out-of-stock";
}
